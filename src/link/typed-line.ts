// Reads one typed line: a value as a technician writes it, an overload, or an act. Refuses everything else
// with one clear line; guesses no decimal comma, because `1,200` reads two ways.
import type { ActName } from '../core/inputs.js';
import { digitStep, numberValue, readNumber } from '../core/meter/number-forms.js';
import { quoted } from '../core/problems.js';
import { type MeasureFunction, siUnit } from '../core/reading.js';

export type TypedLine =
  /** In ohm or volt; `resolution` is one step of the last digit typed. */
  | { readonly typed: 'value'; readonly value: number; readonly resolution: number }
  | { readonly typed: 'overload' }
  | { readonly typed: 'act'; readonly act: ActName }
  | { readonly typed: 'fault'; readonly says: string };

const typedActs = ['open', 'next', 'back', 'skip', 'retake', 'quit'] as const;

const factors: Readonly<Record<string, number>> = { '': 1, k: 1e3, K: 1e3, M: 1e6, m: 1e-3 };
const units = { Ω: /^(?:Ω|\u2126|ohms?|R)?$/iu, V: /^V?$/iu } as const;
const value = /^(?<number>[+-]?[\d.]+)\s*(?<multiplier>[kKMm]?)(?<unit>Ω|\u2126|ohms?|R|V)?$/iu;
const overload = /^(?:OL|O\.L|overload)$/iu;

/** @example readTypedLine('4.7k', 'resistance') // { typed: 'value', value: 4700, resolution: 100 } */
export const readTypedLine = (text: string, measure: MeasureFunction): TypedLine => {
  const line = text.trim();
  const act = typedActs.find((name) => name === line.toLowerCase());
  if (act !== undefined) return { typed: 'act', act };
  if (overload.test(line)) return { typed: 'overload' };
  const groups = value.exec(line)?.groups;
  const number = groups && readNumber(groups.number ?? '');
  const factor = factors[groups?.multiplier ?? ''];
  const unit = siUnit(measure);
  if (number && factor !== undefined && units[unit].test(groups.unit ?? '')) {
    const typed = numberValue(number, factor);
    if (Number.isFinite(typed)) {
      return { typed: 'value', value: typed, resolution: digitStep(number, factor) };
    }
  }
  return {
    typed: 'fault',
    says: `typed ${quoted(line)}: write a value in ${unit} (389.6, 4.7k, 0.512, OL) or one of ${typedActs.join(', ')}`,
  };
};

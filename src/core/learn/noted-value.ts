// Reads a value as a technician notes it: 389.6, 4.7k, 4k7, 512 mV, OL. Refuses what reads two ways or is no value,
// in words that say what to write instead; the text itself is never repeated here.
import { numberValue, readNumber } from '../meter/number-forms.js';
import { parseResistorCode } from '../numbers/parse-resistor-code.js';
import { type MeasureFunction, siUnit } from '../reading.js';

export type NotedValue =
  /** In ohm or volt, 0 or more. */
  | { readonly noted: 'value'; readonly value: number }
  | { readonly noted: 'overload' }
  | { readonly noted: 'nothing' }
  | { readonly noted: 'wrong'; readonly what: string; readonly fix: string };

const overload = /^(?:O\.?L\.?|overload|open)$/iu;
const figure = /^([+-]?[\d.]+(?:[eE][+-]?\d{1,2})?)\s*([\p{L}\u2126]*)$/u;
const decimalComma = /^[+-]?\d+,\d+/u;
/** Longest first: `mohm` is milliohm, and `MOHM` megohm as in SCPI. */
const units: readonly (readonly [unit: 'Ω' | 'V', spelled: RegExp])[] = [
  ['Ω', /(?:Ω|\u2126|ohms?|OHMS?|Ohms?|R)$/u],
  ['V', /[vV]$/u],
];
const multipliers: Readonly<Record<string, number>> = { '': 1, k: 1e3, K: 1e3, M: 1e6, m: 1e-3 };
/** No junction drops this much: the figure is in millivolt. */
const mostDiodeVolts = 20;

/**
 * @param unit from a column of its own; empty where there is none
 * @example readNotedValue('470', 'mV', 'diode'); // { noted: 'value', value: 0.47 }
 */
export const readNotedValue = (
  text: string,
  unit: string,
  measure: MeasureFunction,
): NotedValue => {
  const value = text.trim();
  if (value === '') return { noted: 'nothing' };
  if (overload.test(value)) return { noted: 'overload' };
  if (decimalComma.test(value)) {
    return wrong('a decimal comma reads two ways', 'write a point, such as 0.47');
  }
  const si = siUnit(measure);
  const number = si === 'Ω' && unit.trim() === '' ? resistorCode(value) : null;
  return number ?? withUnit(value, unit.trim(), measure);
};

const wrong = (what: string, fix: string): NotedValue => ({ noted: 'wrong', what, fix });

/** 4K7 and 470R, the letter as decimal point: IEC 60062. Anything else is read as a number. */
const resistorCode = (text: string): NotedValue | null => {
  if (!/\d[rRkKM]\d*$|^[rRkKM]\d+$/u.test(text)) return null;
  try {
    return { noted: 'value', value: parseResistorCode(text).ohms };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return null;
  }
};

const withUnit = (text: string, unit: string, measure: MeasureFunction): NotedValue => {
  const si = siUnit(measure);
  const examples = si === 'Ω' ? '389.6, 4.7k or OL' : '0.512, 512mV or OL';
  const [, digits = '', suffix = ''] = figure.exec(text) ?? [];
  const number = readNumber(digits);
  if (number === null) return wrong('this is no value', `write ${examples}`);
  const own = suffix === '' ? null : readSuffix(suffix);
  const given = unit === '' ? null : readSuffix(unit);
  if (own === undefined || given === undefined) {
    return wrong('the unit is not known', si === 'Ω' ? 'use Ω, kΩ or MΩ' : 'use V or mV');
  }
  if ([own, given].some((one) => one !== null && one.unit !== null && one.unit !== si)) {
    return wrong(`the unit does not fit ${measure}, which is noted in ${si}`, `write ${examples}`);
  }
  if (own !== null && given !== null && own.factor !== given.factor) {
    return wrong('the value and the column give two units', 'give the unit once');
  }
  const value = numberValue(number, own?.factor ?? given?.factor ?? 1);
  if (!Number.isFinite(value) || value < 0) {
    return wrong('a good board reads 0 or more', `write ${examples}`);
  }
  if (measure === 'diode' && value > mostDiodeVolts) {
    return wrong('no junction drops so many volts', 'write 0.47 or 470mV, or give the unit mV');
  }
  return { noted: 'value', value };
};

/** Multiplier and unit of `kΩ`, `k`, `mV`; undefined where it is neither. */
const readSuffix = (
  suffix: string,
): { readonly factor: number; readonly unit: 'Ω' | 'V' | null } | undefined => {
  const found = units.find(([, spelled]) => spelled.test(suffix));
  const multiplier = found === undefined ? suffix : suffix.replace(found[1], '');
  const factor = Object.hasOwn(multipliers, multiplier) ? multipliers[multiplier] : undefined;
  return factor === undefined ? undefined : { factor, unit: found?.[0] ?? null };
};

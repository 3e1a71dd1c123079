// Numbers with a suffix, as program messages to a SCPI instrument carry them: `10 KOHM`, `28E-3K`. The
// multipliers are those of IEEE 488.2, 7.7.3; an unknown suffix is refused.
import { numberValue, readNumber } from './number-forms.js';

const powers: Readonly<Record<string, number>> = {
  EX: 18,
  PE: 15,
  T: 12,
  G: 9,
  MA: 6,
  K: 3,
  '': 0,
  M: -3,
  U: -6,
  N: -9,
  P: -12,
  F: -15,
  A: -18,
};

/** Longest first, so that the unit is found before its multiplier: `MA` alone is milliampere. */
const units = ['OHM', 'HZ', 'V', 'A', 'S', ''] as const;
export type SuffixUnit = (typeof units)[number];

/** `MOHM` and `MHZ` mean mega by the standard's exception. */
const megaUnits: readonly SuffixUnit[] = ['OHM', 'HZ'];

const parts = /^(?<number>[+-]?[\d.]+(?:[eE][+-]?\d+)?)\s*(?<suffix>[A-Za-z]*)$/u;

/**
 * Value and unit (`''` for none) of a number with a suffix, or null where the text is neither.
 * @example parseSuffixed('1 MOHM') // { value: 1e6, unit: 'OHM' }
 */
export const parseSuffixed = (text: string): { value: number; unit: SuffixUnit } | null => {
  const groups = parts.exec(text.trim())?.groups;
  const number = groups && readNumber(groups.number ?? '');
  if (!number) return null;
  const suffix = (groups.suffix ?? '').toUpperCase();
  for (const unit of units) {
    if (!suffix.endsWith(unit)) continue;
    const multiplier = suffix.slice(0, suffix.length - unit.length);
    const mega = multiplier === 'M' && megaUnits.includes(unit);
    const power = mega ? 6 : Object.hasOwn(powers, multiplier) ? powers[multiplier] : undefined;
    if (power !== undefined) return { value: numberValue(number, Number(`1e${power}`)), unit };
  }
  return null;
};

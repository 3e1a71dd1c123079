// The live reading as a display shows it: digits that do not jump about, and a unit. Unlike a captured value
// it keeps its trailing zeros, for they are what the meter shows.

import { inferResolution } from '../measure/accuracy-row.js';
import { engineeringPrefix } from '../measure/engineering-prefix.js';
import { isBlank, isFault, isOverload, siUnit } from '../reading.js';
import type { WalkState } from '../walk/state.js';
import { selectSubject } from './subject.js';

export type Live =
  | {
      readonly kind: 'value';
      readonly digits: string;
      readonly unit: string;
      readonly value: number;
    }
  | { readonly kind: 'overload' | 'blank' | 'fault' | 'none' };

/** The value to compare with the subject's limits, or null where the reading is none or is not the subject's. */
export const selectCompared = (state: WalkState): number | null => {
  const live = selectLive(state);
  if (live.kind !== 'value') return null;
  return state.contact.rest === null || selectSubject(state)?.judged === true ? live.value : null;
};

const mostDecimals = 6;

export const selectLive = (state: WalkState): Live => {
  const { reading, plan, accuracy } = state;
  if (reading === null) return { kind: 'none' };
  if (isFault(reading)) return { kind: 'fault' };
  if (isBlank(reading)) return { kind: 'blank' };
  if (isOverload(reading)) return { kind: 'overload' };
  const { value, range } = reading;
  const measure = reading.function ?? plan.function;
  const step = reading.resolution ?? inferResolution(accuracy, measure, value, range);
  return { kind: 'value', value, ...writeLive(value, step, siUnit(measure)) };
};

/**
 * @param step one step of the last digit, in the unit.
 * @example writeLive(4700, 1, 'Ω'); // { digits: '4.700', unit: 'kΩ' }
 */
export const writeLive = (
  value: number,
  step: number,
  unit: string,
): { readonly digits: string; readonly unit: string } => {
  const { exponent, symbol } = engineeringPrefix(Math.max(Math.abs(value), 100 * step));
  const decimals = Math.round(exponent - Math.log10(step));
  const digits = (value / 10 ** exponent).toFixed(Math.min(mostDecimals, Math.max(0, decimals)));
  return {
    digits: Number(digits) === 0 ? digits.replace('-', '') : digits,
    unit: `${symbol}${unit}`,
  };
};

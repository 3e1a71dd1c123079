// Where a reading lies between the limits of its line. One axis for every line: the lower limit always at
// the same place and the upper one too, so that "inside" looks the same on every pin.
import type { ExpectedBounds } from '../verdict.js';

/** The band takes this much of the axis, and as much is left beside it on both sides. */
export const lowerLimitAt = 3 / 11;
export const upperLimitAt = 8 / 11;

export interface Place {
  /** 0 to 1 along the axis, clamped. */
  readonly at: number;
  readonly beyond: 'below' | 'above' | null;
}

/** Where `value` lies, or null where nothing bounds it. */
export const placeOf = (value: number, expected: ExpectedBounds): Place | null => {
  if (expected === null || expected === 'overload') return null;
  const { low, high } = expected;
  if (!(high > low)) return null;
  const share = (value - low) / (high - low);
  const at = lowerLimitAt + share * (upperLimitAt - lowerLimitAt);
  if (at < 0) return { at: 0, beyond: 'below' };
  return at > 1 ? { at: 1, beyond: 'above' } : { at, beyond: null };
};

/** For a line with nothing to compare with: how far the reading is from where it is heading. */
export const placeFromLevel = (value: number, level: number): number => {
  const reach = Math.max(Math.abs(level) * 0.1, 1e-9);
  return Math.min(1, Math.max(0, 0.5 + (value - level) / (2 * reach)));
};

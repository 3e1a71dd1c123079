// Which pad a reading may be. Refuses to choose between two: then it is none.
import type { Pad } from './pad.js';

/** A reading of the pad lies within so many standard uncertainties of the learned value, almost always. */
const coverage = 3;

/** Half width of what counts as the pad, in the function's unit, for a reading with uncertainty `u`. */
export const padReach = ({ standardUncertainty }: Pad, u: number): number =>
  coverage * Math.hypot(u, standardUncertainty);

/**
 * The pad that reads like the value, or null for none or more than one.
 * @param u standard uncertainty of the touch, see `touchUncertainty`.
 */
export const padAt = (pads: readonly Pad[], value: number, u: number): Pad | null => {
  const alike = pads.filter((pad) => Math.abs(value - pad.value) <= padReach(pad, u));
  return alike.length === 1 ? (alike[0] ?? null) : null;
};

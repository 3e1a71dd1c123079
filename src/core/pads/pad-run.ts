// Gathers the readings of one contact into a touch, as the pads are told apart by: bounces belong to the touch they
// interrupt, and the first or last reading may be of half a contact.
import type { PadTouch } from './pad-listener.js';

export interface PadRun {
  /** First and last reading in contact, seconds. */
  readonly from: number;
  readonly to: number;
  /** The first readings, no more than tell a touch of a pad. */
  readonly values: readonly number[];
}

/** A touch that means something shows fewer readings than this, at fifty a second. */
const mostValues = 80;
/** Contact lost for less than this, seconds, is a bounce. Common practice, no source. */
const longestBounceS = 0.12;

export const withContact = (run: PadRun | null, t: number, value: number): PadRun => {
  if (run === null) return { from: t, to: t, values: [value] };
  const { from, values } = run;
  return { from, to: t, values: values.length < mostValues ? [...values, value] : values };
};

/** True once the probe has been in the air for too long for a bounce. */
export const isOver = (run: PadRun, t: number): boolean => t - run.to >= longestBounceS;

/**
 * The touch that has ended. Half a contact reads more than a whole one, so the lower middle reading stands for all.
 * @param uncertaintyOf see `touchUncertainty`.
 */
export const touchOf = (
  { from, to, values }: PadRun,
  uncertaintyOf: (value: number) => number,
): PadTouch => {
  const value = [...values].sort((a, b) => a - b)[Math.floor((values.length - 1) / 2)] ?? 0;
  return { from, to, value, u: uncertaintyOf(value) };
};

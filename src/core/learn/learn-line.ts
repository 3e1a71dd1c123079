// Makes one line's expected value and tolerance from good boards. From five boards on the tolerance is that of an
// exact tolerance interval; fewer boards cannot give one worth having, and keep the usual tolerance.
import { mean } from '../numbers/mean.js';
import { median } from '../numbers/median.js';
import { requireSample } from '../numbers/require-sample.js';
import { sampleStandardDeviation } from '../numbers/sample-standard-deviation.js';
import type { ApartValue } from './sort-line.js';

/** The interval holds 95 % of all good boards with 95 % confidence. */
export const share = 0.95;
export const confidence = 0.95;

/**
 * From here on the factor is near 5 and goes on falling slowly; for two and three boards it is 36.5 and 9.8
 * (ISO 16269-6), so that limits from them would be useless or, by luck, far too tight.
 */
export const leastBoardsForInterval = 5;

/** Another day, another contact: no limits are tighter than this, nor wider than that (design decisions). */
const leastTolerance = 0.02;
const mostTolerance = 0.5;

export interface LearnedValue {
  /** Ohm or volt, to four significant digits. */
  readonly nominal: number;
  /** As a fraction, rounded up to a thousandth. */
  readonly tolerance: number;
  readonly boards: number;
  readonly by: 'interval' | 'usual';
  /** k s / mean, as a fraction: what the boards alone prove; null for a single one. */
  readonly interval: number | null;
  /** The boards scatter further than the tolerance that could be given. */
  readonly isTooScattered: boolean;
}

export type LearnedLine = { readonly line: string; readonly apart: readonly ApartValue[] } & (
  | ({
      readonly outcome: 'value';
      /** Full scale of the range it was read on, where that is known. */
      readonly range?: number;
    } & LearnedValue)
  | { readonly outcome: 'overload'; readonly boards: number }
  /** Nothing was learned: not read, or boards that contradict one another. */
  | { readonly outcome: 'kept'; readonly because: 'not-read' | 'undecided' }
);

export interface LearningRule {
  /** The tolerance the line has so far, as a fraction. */
  readonly usual: number;
  /** Standard uncertainty of one reading, as a fraction. */
  readonly relativeUncertainty: number;
  /** The exact two-sided tolerance factor for so many boards. */
  readonly factor: (boards: number) => number;
}

/**
 * Mean and k s for five boards or more, with k the exact two-sided tolerance factor for 95 % at 95 % (NIST/SEMATECH
 * e-Handbook 7.2.6.3; ISO 16269-6). For fewer the median, and the usual tolerance or the widest departure seen,
 * whichever is more. A tolerance never falls below what measuring leaves uncertain.
 *
 * @param values one a board, ohm or volt, above 0
 * @throws RangeError on no value or on one that is not above 0.
 */
export const learnValue = (
  values: readonly number[],
  { usual, relativeUncertainty, factor }: LearningRule,
): LearnedValue => {
  requireSample(values, 1, 'learning a line');
  if (values.some((value) => !(value > 0))) throw new RangeError('learning needs values above 0');
  const n = values.length;
  const byInterval = n >= leastBoardsForInterval;
  const centre = byInterval ? mean(values) : median(values);
  const interval = n < 2 ? null : (factor(n) * sampleStandardDeviation(values)) / centre;
  const furthest = Math.max(...values.map((value) => Math.abs(value / centre - 1)));
  const wished = byInterval ? (interval ?? usual) : Math.max(usual, furthest);
  const least = Math.max(leastTolerance, 2 * relativeUncertainty);
  const most = Math.max(mostTolerance, usual);
  return {
    nominal: Number(centre.toPrecision(4)),
    tolerance: roundUp(Math.min(most, Math.max(least, wished))),
    boards: n,
    by: byInterval ? 'interval' : 'usual',
    interval,
    isTooScattered: wished > most,
  };
};

/** To a thousandth; a whisker of binary remainder is no reason to go up. */
const roundUp = (fraction: number): number => Math.ceil(fraction * 1000 - 1e-6) / 1000;

// The uncertainty of a counted share, so that a benchmark never claims more than its number of trials shows.
// Refuses an empty trial.
import { wilsonInterval } from '../../../src/core/numbers/wilson-interval.js';

export interface Proportion {
  readonly count: number;
  readonly of: number;
  readonly share: number;
  /** Wilson's score interval, two-sided 95 %. */
  readonly low: number;
  readonly high: number;
}

/**
 * `count` of `of`, with its 95 % interval.
 * @throws RangeError when the counts are no counts of trials.
 * @example proportion(0, 100).high // 0.03699...
 */
export const proportion = (count: number, of: number): Proportion => ({
  count,
  of,
  share: count / of,
  ...wilsonInterval(count, of, 0.95),
});

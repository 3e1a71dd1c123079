// Promises the probability that a true value lies within limits, given what was read. Refuses values that
// are not numbers and limits the wrong way round.
import type { Spread } from './spread.js';
import { spreadCdf } from './spread-cdf.js';

/** Either limit may be left out: then there is none on that side. In the unit of the value. */
export interface Limits {
  readonly low?: number;
  readonly high?: number;
}

/**
 * p_c = P(low <= true value <= high): JCGM 106:2012, clause 7. With a normal spread,
 * Phi((high - y)/u) - Phi((low - y)/u); with a rectangle in it, the same with the distribution of the sum.
 * Differences are taken in the lower tail, so that a small probability keeps its digits.
 *
 * @throws RangeError when the value is not finite or low is above high.
 * @example conformityProbability(-5.47, normalSpread(0.05), { high: -5.4 }); // 0.919243
 */
export function conformityProbability(value: number, spread: Spread, limits: Limits): number {
  const low = limits.low ?? -Infinity;
  const high = limits.high ?? Infinity;
  if (!Number.isFinite(value)) throw new RangeError('a conformity needs a finite value');
  if (!(low <= high)) throw new RangeError(`the low limit ${low} lies above the high one ${high}`);
  const chance =
    low > value
      ? spreadCdf(value - low, spread) - spreadCdf(value - high, spread)
      : spreadCdf(high - value, spread) - spreadCdf(low - value, spread);
  return Math.max(0, chance);
}

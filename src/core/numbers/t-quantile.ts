// Promises Student's quantile for any positive degrees of freedom, infinite included. Refuses
// probabilities outside (0, 1) and degrees of freedom of zero or below.
import { findRoot } from './find-root.js';
import { normalQuantile } from './normal-quantile.js';
import { requirePositive } from './require-positive.js';
import { requireProbability } from './require-probability.js';
import { tCdf } from './t-cdf.js';

/**
 * The t for which P(T <= t) = p, by inverting the distribution function on its lower half.
 *
 * @throws RangeError unless 0 < p < 1 and degreesOfFreedom > 0.
 * @example tQuantile(0.975, 19); // 2.093024
 */
export function tQuantile(p: number, degreesOfFreedom: number): number {
  requireProbability(p, 'a probability');
  requirePositive(degreesOfFreedom, 'degrees of freedom');
  if (p === 0.5) return 0;
  const tail = Math.min(p, 1 - p);
  const normal = normalQuantile(tail);
  let low = 2 * normal;
  if (degreesOfFreedom === Infinity) return p < 0.5 ? normal : -normal;
  while (tCdf(low, degreesOfFreedom) > tail) low *= 2;
  const t = findRoot((x) => tCdf(x, degreesOfFreedom) - tail, low, 0);
  return p < 0.5 ? t : -t;
}

// Promises the chi-squared quantile. Refuses probabilities outside (0, 1) and degrees of freedom that are
// not finite and above zero.
import { findRoot } from './find-root.js';
import { incompleteGamma } from './incomplete-gamma.js';
import { requirePositive } from './require-positive.js';
import { requireProbability } from './require-probability.js';

/**
 * The x for which P(X <= x) = p, where P(X <= x) = P(nu/2, x/2), the regularised incomplete gamma. The
 * smaller tail is inverted.
 *
 * @throws RangeError unless 0 < p < 1 and degreesOfFreedom is finite and above 0.
 * @example chiSquaredQuantile(0.01, 42); // 23.650095
 */
export function chiSquaredQuantile(p: number, degreesOfFreedom: number): number {
  requireProbability(p, 'a probability');
  requirePositive(degreesOfFreedom, 'degrees of freedom');
  if (degreesOfFreedom === Infinity) throw new RangeError('degrees of freedom must be finite');
  const excess = (x: number): number => {
    const { lower, upper } = incompleteGamma(degreesOfFreedom / 2, x / 2);
    return p < 0.5 ? lower - p : 1 - p - upper;
  };
  let high = degreesOfFreedom + 1;
  while (excess(high) < 0) high *= 2;
  return findRoot(excess, 0, high);
}

// Promises the quantile of a beta distribution. Refuses probabilities outside (0, 1) and shapes of zero or
// below.
import { findRoot } from './find-root.js';
import { incompleteBeta } from './incomplete-beta.js';
import { requireProbability } from './require-probability.js';

/**
 * The x for which I_x(a, b) = p; the smaller tail is inverted.
 *
 * @throws RangeError unless 0 < p < 1, a > 0 and b > 0.
 * @example betaQuantile(0.5, 2, 2); // 0.5
 */
export function betaQuantile(p: number, a: number, b: number): number {
  requireProbability(p, 'a probability');
  const excess = (x: number): number => {
    const { lower, upper } = incompleteBeta(x, a, b);
    return p < 0.5 ? lower - p : 1 - p - upper;
  };
  return findRoot(excess, 0, 1);
}

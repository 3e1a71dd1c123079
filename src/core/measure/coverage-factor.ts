// Promises the factor that turns a combined standard uncertainty into an expanded one, by the shape of the
// budget and not by the habit of two. Refuses an empty budget and one that adds up to nothing.
import { tQuantile } from '../numbers/t-quantile.js';
import { combinedUncertainty } from './combined-uncertainty.js';
import { type Contribution, contributed } from './contribution.js';
import { effectiveDegreesOfFreedom } from './effective-degrees-of-freedom.js';
import { trapezoidCoverageFactor } from './trapezoid-coverage-factor.js';

/** All the rest together may reach this share of what dominates: EA-4/02 S9. */
const dominance = 0.3;

/**
 * One rectangle that dominates: k = p sqrt(3), EA-4/02 S9. Two that do: the trapezoid, EA-4/02 S10. Anything
 * else: Student's t with the effective degrees of freedom, GUM G.6.4. The first rule is a convention: with a
 * second rectangle right at the threshold the interval it gives covers 92 %, not 95 %.
 *
 * @throws RangeError on an empty budget, one whose rows are all zero, or a probability outside (0, 1).
 */
export function coverageFactor(budget: readonly Contribution[], probability = 0.95): number {
  if (combinedUncertainty(budget) === 0) throw new RangeError('a budget of zeros has no factor');
  const [first, second, ...others] = [...budget].sort((a, b) => contributed(b) - contributed(a));
  const isRectangle = (row: Contribution | undefined): row is Contribution =>
    row?.distribution === 'rectangular';
  const together = (rows: readonly Contribution[]): number => Math.hypot(...rows.map(contributed));

  if (isRectangle(first)) {
    const rest = second ? [second, ...others] : [];
    if (together(rest) <= dominance * contributed(first)) {
      return trapezoidCoverageFactor(contributed(first), 0, probability);
    }
    if (isRectangle(second) && together(others) <= dominance * together([first, second])) {
      return trapezoidCoverageFactor(contributed(first), contributed(second), probability);
    }
  }
  return tQuantile((1 + probability) / 2, effectiveDegreesOfFreedom(budget));
}

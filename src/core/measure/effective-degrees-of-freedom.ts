// Promises how well the combined uncertainty itself is known, for independent rows. Refuses an empty budget
// and rows with degrees of freedom of zero or below.
import { combinedUncertainty } from './combined-uncertainty.js';
import { type Contribution, contributed } from './contribution.js';

/**
 * Welch-Satterthwaite: nu = u_c^4 / sum( (c_i u_i)^4 / nu_i ): GUM G.4.1, eq. G.2b. Infinity when every row
 * that adds something is known exactly. Not truncated to a whole number: the t quantile takes fractions.
 *
 * @throws RangeError on an empty budget or a row whose degrees of freedom are not above 0.
 */
export function effectiveDegreesOfFreedom(budget: readonly Contribution[]): number {
  const combined = combinedUncertainty(budget);
  let sum = 0;
  for (const row of budget) {
    if (!(row.degreesOfFreedom > 0)) {
      throw new RangeError(`${row.source}: degrees of freedom must be above 0`);
    }
    if (combined > 0) sum += (contributed(row) / combined) ** 4 / row.degreesOfFreedom;
  }
  return sum === 0 ? Infinity : 1 / sum;
}

// Promises the combined standard uncertainty of a budget. Refuses an empty budget and a matrix that does
// not fit it.
import { type CorrelationMatrix, combinedCovariance } from './combined-covariance.js';
import type { Contribution } from './contribution.js';

/**
 * u_c = sqrt( sum (c_i u_i)^2 ), in the unit of the result: GUM 5.1.2, eq. 10. With a correlation matrix of
 * the inputs, GUM 5.2.2, eq. 16.
 *
 * @throws RangeError on an empty budget, or a matrix that does not fit it.
 */
export function combinedUncertainty(
  budget: readonly Contribution[],
  correlation?: CorrelationMatrix,
): number {
  if (budget.length === 0) throw new RangeError('a budget needs at least one row');
  return Math.sqrt(Math.max(0, combinedCovariance(budget, budget, correlation)));
}

// Promises Student's distribution function for any positive degrees of freedom, whole or not, infinite
// included. Refuses degrees of freedom of zero or below.
import { incompleteBeta } from './incomplete-beta.js';
import { normalCdf } from './normal-cdf.js';
import { requirePositive } from './require-positive.js';

/** From here on the normal distribution differs by less than 1e-9. */
const practicallyInfinite = 1e9;

/**
 * P(T <= t) = I_x(nu/2, 1/2) / 2 for t <= 0, with x = nu / (nu + t^2): DLMF 8.17.
 *
 * @throws RangeError unless degreesOfFreedom > 0, or when t is NaN.
 * @example tCdf(-2.093024, 19); // 0.025
 */
export function tCdf(t: number, degreesOfFreedom: number): number {
  requirePositive(degreesOfFreedom, 'degrees of freedom');
  if (degreesOfFreedom >= practicallyInfinite || !Number.isFinite(t)) return normalCdf(t);
  const sum = degreesOfFreedom + t * t;
  const { lower, upper } = incompleteBeta(
    degreesOfFreedom / sum,
    degreesOfFreedom / 2,
    0.5,
    (t * t) / sum,
  );
  return t <= 0 ? lower / 2 : 0.5 + upper / 2;
}

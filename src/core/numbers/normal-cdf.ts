// Promises the standard normal distribution function to about 14 digits, in the lower tail too, where it is
// relative accuracy that counts. Refuses what is not a number; infinities give 0 and 1.
import { normalDensity } from './normal-density.js';

/** Below this the series is quicker and loses nothing; above it the continued fraction is. */
const seriesBelow = 2;

/** Phi(a) - 1/2 = phi(a) (a + a^3/3 + a^5/(3*5) + ...): all terms positive (Marsaglia, 2004). */
function centralPart(a: number): number {
  let term = a;
  let sum = a;
  for (let odd = 3; ; odd += 2) {
    term *= (a * a) / odd;
    if (sum + term === sum) return normalDensity(a) * sum;
    sum += term;
  }
}

/** Mills' ratio, 1 / (a + 1 / (a + 2 / (a + 3 / ...))), from the inside out: Laplace; DLMF 7.9. */
function tailPart(a: number): number {
  let inner = a;
  for (let k = Math.ceil(30 + 400 / (a * a)); k >= 1; k -= 1) inner = a + k / inner;
  return normalDensity(a) / inner;
}

/**
 * Phi(z), the probability that a standard normal variable is at most z.
 *
 * @throws RangeError when z is NaN.
 * @example normalCdf(1.4); // 0.919243
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) throw new RangeError('a normal probability needs a number');
  const a = Math.abs(z);
  if (a < seriesBelow) return 0.5 + Math.sign(z) * centralPart(a);
  const tail = a === Infinity ? 0 : tailPart(a);
  return z < 0 ? tail : 1 - tail;
}

// Promises both tails of the beta distribution, each with its own accuracy: the smaller is never taken as
// one minus the larger. Refuses x outside [0, 1] and shapes of zero or below.
import { logBeta } from './log-beta.js';
import { requirePositive } from './require-positive.js';

const longest = 1_000_000;

/** The continued fraction of DLMF 8.17.22, by the modified Lentz method. */
function continuedFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < longest; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + even * d);
    c = 1 + even / c;
    value *= c * d;
    d = 1 / (1 + odd * d);
    c = 1 + odd / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) return value;
  }
  throw new RangeError('the incomplete beta did not converge');
}

/**
 * Regularised incomplete beta: `lower` is I_x(a, b), `upper` is 1 - I_x(a, b). Pass `complement` where
 * 1 - x is known more exactly than it can be subtracted.
 *
 * @throws RangeError unless 0 <= x <= 1, a > 0 and b > 0.
 * @example incompleteBeta(0.5, 2, 3).lower; // 0.6875
 */
export function incompleteBeta(
  x: number,
  a: number,
  b: number,
  complement = 1 - x,
): { lower: number; upper: number } {
  requirePositive(a, 'the first shape of a beta distribution');
  requirePositive(b, 'the second shape of a beta distribution');
  if (!(x >= 0 && x <= 1)) throw new RangeError(`a beta variable lies in 0 to 1, got ${x}`);
  if (x === 0 || complement === 0) return { lower: x, upper: 1 - x };
  const logX = x > 0.5 ? Math.log1p(-complement) : Math.log(x);
  const logComplement = x > 0.5 ? Math.log(complement) : Math.log1p(-x);
  const front = Math.exp(a * logX + b * logComplement - logBeta(a, b));
  if (x < (a + 1) / (a + b + 2)) {
    const lower = (front * continuedFraction(x, a, b)) / a;
    return { lower, upper: 1 - lower };
  }
  const upper = (front * continuedFraction(complement, b, a)) / b;
  return { lower: 1 - upper, upper };
}

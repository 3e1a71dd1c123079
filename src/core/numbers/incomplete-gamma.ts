// Promises both tails of the gamma distribution, each with its own accuracy. Refuses a shape of zero or
// below and a negative x.
import { logGamma } from './log-gamma.js';
import { requirePositive } from './require-positive.js';

const longest = 1_000_000;

/** sum x^k / (a (a+1) ... (a+k)): DLMF 8.11.4. */
function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let k = 1; k < longest; k += 1) {
    term *= x / (a + k);
    if (sum + term === sum) return sum;
    sum += term;
  }
  throw new RangeError('the incomplete gamma did not converge');
}

/** 1 / (x + 1 - a - 1(1 - a) / (x + 3 - a - ...)): DLMF 8.9.2, by the modified Lentz method. */
function continuedFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = Infinity;
  let d = 1 / b;
  let value = d;
  for (let k = 1; k < longest; k += 1) {
    const numerator = k * (a - k);
    b += 2;
    d = 1 / (b + numerator * d);
    c = b + numerator / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) return value;
  }
  throw new RangeError('the incomplete gamma did not converge');
}

/**
 * Regularised incomplete gamma: `lower` is P(a, x), `upper` is Q(a, x) = 1 - P(a, x).
 *
 * @throws RangeError unless a > 0 and x >= 0.
 * @example incompleteGamma(0.5, 2).upper; // 0.0455, the chance of a normal variable beyond 2 either way
 */
export function incompleteGamma(a: number, x: number): { lower: number; upper: number } {
  requirePositive(a, 'the shape of a gamma distribution');
  if (!(x >= 0)) throw new RangeError(`a gamma variable is 0 or more, got ${x}`);
  if (x === 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    const lower = front * series(a, x);
    return { lower, upper: 1 - lower };
  }
  const upper = front * continuedFraction(a, x);
  return { lower: 1 - upper, upper };
}

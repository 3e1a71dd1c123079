// Promises log B(a, b) without the cancellation of three large log-gammas. Refuses zero and below.
import { logGamma } from './log-gamma.js';
import { requirePositive } from './require-positive.js';
import { stirlingRemainder } from './stirling-remainder.js';

/**
 * log B(a, b) = log Gamma(a) + log Gamma(b) - log Gamma(a + b): DLMF 5.12.1. Where the larger argument
 * reaches 12, Stirling's leading terms are combined by hand before anything large is subtracted.
 *
 * @throws RangeError unless a > 0 and b > 0.
 * @example logBeta(2, 3); // log(1/12)
 */
export function logBeta(a: number, b: number): number {
  requirePositive(a, 'the first argument of log-beta');
  requirePositive(b, 'the second argument of log-beta');
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  const sum = a + b;
  if (large < 12) return logGamma(a) + logGamma(b) - logGamma(sum);
  const remainders = stirlingRemainder(large) - stirlingRemainder(sum);
  const largeOverSum = -(large - 0.5) * Math.log1p(small / large);
  if (small < 12) {
    return logGamma(small) + largeOverSum - small * (Math.log(sum) - 1) + remainders;
  }
  return (
    Math.log(2 * Math.PI) / 2 -
    Math.log(small) / 2 +
    small * Math.log(small / sum) +
    largeOverSum +
    stirlingRemainder(small) +
    remainders
  );
}

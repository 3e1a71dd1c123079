// Promises a standard deviation that a third of wrong values cannot spoil and that few values cannot make up:
// what is seen is weighed against what was expected beforehand. Refuses an expectation of nothing.
import { median } from '../numbers/median.js';
import { requirePositive } from '../numbers/require-positive.js';

/** 1 / the third quartile of the standard normal: makes a median of deviations a standard deviation. */
const medianToDeviation = 1.4826;

/** How many further deviations the expectation counts for (design decision). */
const weightOfExpectation = 4;

/**
 * s² = (4 s₀² + n (1.4826 median|d|)²) / (4 + n), in the unit of the deviations: the scaled median absolute
 * deviation, shrunk towards s₀ as the mean of a scaled inverse chi-squared prior of four degrees of freedom
 * would be. With no deviations it is s₀.
 *
 * @param deviations from their own centre
 * @throws RangeError when the expected deviation is not positive.
 * @example robustScale([], 0.02); // 0.02
 */
export function robustScale(deviations: readonly number[], expected: number): number {
  requirePositive(expected, 'an expected deviation');
  const n = deviations.length;
  if (n === 0) return expected;
  const seen = medianToDeviation * median(deviations.map(Math.abs));
  return Math.sqrt(
    (weightOfExpectation * expected ** 2 + n * seen ** 2) / (weightOfExpectation + n),
  );
}

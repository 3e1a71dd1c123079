// Promises the exact randomization p-value of paired differences, by trying every arrangement of signs.
// Refuses more than 20 differences other than zero, and values not finite.
import type { Alternative } from './alternative.js';
import { requireSample } from './require-sample.js';

export interface SignFlipResult {
  /** Arrangements whose sum is at least as extreme as the one seen. */
  readonly extreme: number;
  /** All arrangements tried. */
  readonly arrangements: number;
  readonly pValue: number;
}

/** Sums that differ by rounding alone count as equal. */
const roundingShare = 1e-12;

/**
 * Fisher (1935), The Design of Experiments, section 21: were the sign of each difference a matter of chance,
 * how often would their sum be as extreme as the one seen? A difference of zero says nothing and is left
 * out, which does not change the p-value.
 *
 * @throws RangeError on an empty sample, a value not finite, or more than 20 differences other than zero.
 * @example signFlipTest([1, 2, 3], 'two-sided').pValue; // 2/8
 */
export function signFlipTest(
  differences: readonly number[],
  alternative: Alternative,
): SignFlipResult {
  requireSample(differences, 1, 'a sign-flip test');
  const moved = differences.filter((difference) => difference !== 0);
  if (moved.length > 20) throw new RangeError(`at most 20 differences, got ${moved.length}`);
  const seen = moved.reduce((sum, difference) => sum + difference, 0);
  const slack = roundingShare * moved.reduce((sum, difference) => sum + Math.abs(difference), 0);
  const arrangements = 2 ** moved.length;
  const sums = new Float64Array(arrangements);
  for (const [i, difference] of moved.entries()) {
    const filled = 2 ** i;
    for (let j = 0; j < filled; j += 1) {
      const sum = sums[j] ?? 0;
      sums[j] = sum + difference;
      sums[j + filled] = sum - difference;
    }
  }
  const isExtreme = {
    greater: (sum: number) => sum >= seen - slack,
    less: (sum: number) => sum <= seen + slack,
    'two-sided': (sum: number) => Math.abs(sum) >= Math.abs(seen) - slack,
  }[alternative];
  let extreme = 0;
  for (const sum of sums) if (isExtreme(sum)) extreme += 1;
  return { extreme, arrangements, pValue: extreme / arrangements };
}

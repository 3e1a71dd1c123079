// Promises the one place that best splits a series into two levels. It always names a place, also in a
// series that has none: compare the residuals. Refuses fewer than two values.
import { mean } from './mean.js';
import { requireSample } from './require-sample.js';

export interface LevelBreak {
  /** How many values come before the break. */
  readonly before: number;
  readonly meanBefore: number;
  readonly meanAfter: number;
  /** Sum of squares about the two means, and about the one mean without a break. */
  readonly residual: number;
  readonly residualWithout: number;
}

/**
 * The split with the least sum of squares about its two means; the earliest of equals. Deviations from the
 * overall mean are summed once: a split after k of n with partial sum S saves S^2 (1/k + 1/(n - k)).
 *
 * @throws RangeError on fewer than two values or a value that is not finite.
 * @example leastSquaresBreak([1, 1, 1, 5, 5]).before; // 3
 */
export function leastSquaresBreak(values: readonly number[]): LevelBreak {
  requireSample(values, 2, 'a break');
  const n = values.length;
  const centre = mean(values);
  let residualWithout = 0;
  let sum = 0;
  let best = { before: 1, sum: 0, saved: -1 };
  for (const [i, value] of values.entries()) {
    const deviation = value - centre;
    residualWithout += deviation * deviation;
    sum += deviation;
    const before = i + 1;
    const saved = before === n ? -1 : sum * sum * (1 / before + 1 / (n - before));
    if (saved > best.saved) best = { before, sum, saved };
  }
  return {
    before: best.before,
    meanBefore: centre + best.sum / best.before,
    meanAfter: centre - best.sum / (n - best.before),
    residual: Math.max(0, residualWithout - best.saved),
    residualWithout,
  };
}

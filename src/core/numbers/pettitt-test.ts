// Promises the likeliest change of level by ranks, so that single wild values do not make one. Its p-value
// is the usual approximation, poor under about 20 values. Refuses fewer than two values.
import { requireSample } from './require-sample.js';

export interface RankBreak {
  /** How many values come before the change. */
  readonly before: number;
  /** K = max |U|. */
  readonly statistic: number;
  readonly pValue: number;
}

/**
 * Pettitt (1979), Applied Statistics 28: U(t) = sum over i <= t < j of sign(x[i] - x[j]), built up by
 * U(t) = U(t - 1) + sum over all j of sign(x[t] - x[j]). p = 2 exp(-6 K^2 / (n^3 + n^2)), at most 1. The
 * earliest of equals is named.
 *
 * @throws RangeError on fewer than two values or a value that is not finite.
 * @example pettittTest([1, 2, 1, 2, 8, 9, 8, 9]).before; // 4
 */
export function pettittTest(values: readonly number[]): RankBreak {
  requireSample(values, 2, 'a change of level');
  const n = values.length;
  let u = 0;
  let before = 1;
  let statistic = 0;
  for (const [i, value] of values.entries()) {
    for (const other of values) u += Math.sign(value - other);
    if (i + 1 < n && Math.abs(u) > statistic) {
      statistic = Math.abs(u);
      before = i + 1;
    }
  }
  const pValue = Math.min(1, 2 * Math.exp((-6 * statistic * statistic) / (n ** 3 + n ** 2)));
  return { before, statistic, pValue };
}

// Promises the middle value; the input is left in its order. Refuses an empty sample and values not finite.
import { requireSample } from './require-sample.js';

/**
 * The middle of the sorted values, or the mean of the two middle ones, in the unit of the values.
 *
 * @throws RangeError on an empty sample or a value that is not finite.
 * @example median([3, 1, 2, 10]); // 2.5
 */
export function median(values: readonly number[]): number {
  requireSample(values, 1, 'a median');
  if (values.length === 1) return values[0] as number;
  const sorted = new Float64Array(values).sort();
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? 0;
  if (sorted.length % 2 === 1) return upper;
  const lower = sorted[half - 1] ?? 0;
  return lower + (upper - lower) / 2;
}

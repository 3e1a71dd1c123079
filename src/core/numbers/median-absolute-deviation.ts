// Promises a spread that half the values may be wrong without moving far. It is raw: no factor makes it an
// estimate of a standard deviation. Refuses an empty sample and values not finite.
import { median } from './median.js';

/**
 * MAD = median |x - median(x)|, in the unit of the values. Zero when more than half of them are equal.
 *
 * @throws RangeError on an empty sample or a value that is not finite.
 * @example medianAbsoluteDeviation([1, 1, 2, 2, 4, 6, 9]); // 1
 */
export function medianAbsoluteDeviation(values: readonly number[]): number {
  const centre = median(values);
  return median(values.map((value) => Math.abs(value - centre)));
}

// Promises the arithmetic mean to the last digit or so. Refuses an empty sample and values not finite.
import { requireSample } from './require-sample.js';

/**
 * The arithmetic mean, in the unit of the values. The second pass adds back what rounding left out of the
 * first.
 *
 * @throws RangeError on an empty sample or a value that is not finite.
 * @example mean([1, 2, 4.5]); // 2.5
 */
export function mean(values: readonly number[]): number {
  requireSample(values, 1, 'a mean');
  const n = values.length;
  let rough = 0;
  for (const value of values) rough += value / n;
  let left = 0;
  for (const value of values) left += value - rough;
  return rough + left / n;
}

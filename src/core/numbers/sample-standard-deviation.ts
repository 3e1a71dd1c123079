// Promises the sample standard deviation without the cancellation of the one-pass formula. Refuses fewer
// than two values, of which no spread can be told.
import { mean } from './mean.js';
import { requireSample } from './require-sample.js';

/**
 * s = sqrt( sum (x - mean)^2 / (n - 1) ), in the unit of the values: GUM 4.2.2. Two passes; the sum of the
 * deviations, zero but for rounding, corrects the second (Chan, Golub and LeVeque, 1983).
 *
 * @throws RangeError on fewer than two values or a value that is not finite.
 * @example sampleStandardDeviation([2, 4, 4, 4, 5, 5, 7, 9]); // 2.138
 */
export function sampleStandardDeviation(values: readonly number[]): number {
  requireSample(values, 2, 'a standard deviation');
  const n = values.length;
  const centre = mean(values);
  let squares = 0;
  let left = 0;
  for (const value of values) {
    const deviation = value - centre;
    squares += deviation * deviation;
    left += deviation;
  }
  return Math.sqrt(Math.max(0, squares - (left * left) / n) / (n - 1));
}

// Promises how much a value resembles the one before it, -1 to 1. A series that does not move has none: 0.
// Refuses fewer than two values.
import { mean } from './mean.js';
import { requireSample } from './require-sample.js';

/**
 * r1 = sum (x[i] - mean)(x[i+1] - mean) / sum (x[i] - mean)^2, as the NIST StRD univariate sets define it.
 *
 * @throws RangeError on fewer than two values or a value that is not finite.
 * @example lagOneAutocorrelation([1, 2, 3, 4, 5]); // 0.4
 */
export function lagOneAutocorrelation(values: readonly number[]): number {
  requireSample(values, 2, 'an autocorrelation');
  const centre = mean(values);
  let products = 0;
  let squares = 0;
  let previous: number | null = null;
  for (const value of values) {
    const deviation = value - centre;
    if (previous !== null) products += previous * deviation;
    squares += deviation * deviation;
    previous = deviation;
  }
  return squares === 0 ? 0 : products / squares;
}

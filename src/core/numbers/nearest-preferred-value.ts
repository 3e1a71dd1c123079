// Promises the preferred value nearest by ratio, since tolerances are ratios. Refuses zero and below.
import type { ESeries } from './preferred-values.js';
import { preferredValuesBetween } from './preferred-values-between.js';

/**
 * @throws RangeError unless the value is finite and above 0.
 * @example nearestPreferredValue(4600, 'E12'); // 4700
 */
export function nearestPreferredValue(value: number, series: ESeries): number {
  if (!(value > 0 && value < Infinity)) {
    throw new RangeError(`a preferred value needs a number above 0, got ${value}`);
  }
  const distance = (candidate: number): number => Math.abs(Math.log(candidate / value));
  return preferredValuesBetween(value / 10, value * 10, series).reduce((best, candidate) =>
    distance(candidate) < distance(best) ? candidate : best,
  );
}

// Promises every preferred value from low to high, rising, as exact decimals (4700, not 4700.000000000001).
// Refuses bounds of zero or below, and more than twenty decades.
import { type ESeries, preferredValues } from './preferred-values.js';

/**
 * @throws RangeError unless 0 < low <= high, both finite and within twenty decades of each other.
 * @example preferredValuesBetween(300, 1500, 'E6'); // [330, 470, 680, 1000, 1500]
 */
export function preferredValuesBetween(low: number, high: number, series: ESeries): number[] {
  if (!(low > 0 && high >= low && high / low <= 1e20)) {
    throw new RangeError(`preferred values need 0 < low <= high, got ${low} and ${high}`);
  }
  const first = Math.floor(Math.log10(low)) - 1;
  const last = Math.ceil(Math.log10(high)) + 1;
  const found: number[] = [];
  for (let decade = first; decade <= last; decade += 1) {
    for (const digits of preferredValues(series)) {
      const value = Number(`${digits}e${decade - 2}`);
      if (value >= low && value <= high) found.push(value);
    }
  }
  return found;
}

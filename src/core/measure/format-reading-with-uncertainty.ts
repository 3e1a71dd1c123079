// Promises a reading with its standard uncertainty, for reports. Never prints NaN or Infinity, never throws.
import { formatReading, isWorthWriting } from './format-reading.js';
import { twoDigitUncertainty } from './two-digit-uncertainty.js';
import { writeToPlace } from './write-to-place.js';

/**
 * The value followed by its standard uncertainty in parentheses, to two significant digits and in steps of
 * the value's last digit: the form of GUM 7.2.2. Without a known uncertainty, as `formatReading`.
 *
 * @example formatReadingWithUncertainty(389.6, 1.298, 'Ω'); // '389.6(13) Ω'
 */
export function formatReadingWithUncertainty(
  value: number,
  standardUncertainty: number | null,
  unit: string,
): string {
  if (!Number.isFinite(value) || !isWorthWriting(value, standardUncertainty)) {
    return formatReading(value, null, unit);
  }
  const written = writeToPlace(value, twoDigitUncertainty(standardUncertainty));
  return `${written.digits}(${written.uncertainty}) ${written.symbol}${unit}`;
}

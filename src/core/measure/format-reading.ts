// Promises a reading as a person writes it: sensible digits, an engineering prefix, a unit. Never prints NaN
// or Infinity, and never throws: it writes on screens that must stay up.
import { engineeringPrefix } from './engineering-prefix.js';
import { twoDigitUncertainty } from './two-digit-uncertainty.js';
import { writeToPlace } from './write-to-place.js';

/** Without an uncertainty no more digits than this are claimed. */
const digitsUnknown = 4;

/** An uncertainty past the digits that a number can hold says nothing about how to write it. */
export const isWorthWriting = (value: number, u: number | null): u is number =>
  u !== null && u > 1e-30 && u < 1e30 && Math.abs(value) < 1e15 * u;

/**
 * The value with as many digits as its standard uncertainty supports: two digits of the uncertainty where the
 * first is 1, else one. Where the uncertainty is not known (null, zero, not a number), four digits at most
 * and no trailing zeros. A value that is not finite is written in words.
 *
 * @example formatReading(389.6, 1.3, 'Ω'); // '389.6 Ω'
 * @example formatReading(4700, 31, 'Ω'); // '4.70 kΩ'
 * @example formatReading(0.512, null, 'V'); // '0.512 V'
 */
export function formatReading(
  value: number,
  standardUncertainty: number | null,
  unit: string,
): string {
  if (!Number.isFinite(value)) return 'no value';
  if (isWorthWriting(value, standardUncertainty)) {
    const two = twoDigitUncertainty(standardUncertainty);
    const one = { place: two.place + 1, steps: Math.round(two.steps / 10) };
    const sensible = two.steps < 20 ? two : one;
    const { digits, symbol } = writeToPlace(value, sensible);
    return `${digits} ${symbol}${unit}`;
  }
  const { exponent, symbol } = engineeringPrefix(Number(value.toPrecision(digitsUnknown)));
  const scaled = value / Number(`1e${exponent}`);
  return `${Number(scaled.toPrecision(digitsUnknown))} ${symbol}${unit}`;
}

// Promises the digits of a value and of its uncertainty, both to one decimal place and in one prefix.
// Refuses nothing: the caller has made sure that the place is worth writing.
import { engineeringPrefix } from './engineering-prefix.js';
import type { WrittenUncertainty } from './two-digit-uncertainty.js';

const powerOfTen = (exponent: number): number => Number(`1e${exponent}`);

/** Value times 10^exponent, dividing where that is exact and multiplying is not. */
const scaleBy = (value: number, exponent: number): number =>
  exponent >= 0 ? value * powerOfTen(exponent) : value / powerOfTen(-exponent);

/**
 * The prefix fits the larger of the rounded value and its uncertainty. `uncertainty` counts steps of the
 * last digit of `digits`.
 *
 * @example writeToPlace(4703, { place: 1, steps: 31 }); // { digits: '4.70', uncertainty: 31, symbol: 'k' }
 */
export function writeToPlace(value: number, { place, steps }: WrittenUncertainty) {
  const valueSteps = Math.sign(value) * Math.round(scaleBy(Math.abs(value), -place));
  const size = Math.max(Math.abs(valueSteps), steps);
  const prefix = engineeringPrefix(Number(`${size}e${place}`));
  const shift = place - prefix.exponent;
  return {
    digits: scaleBy(valueSteps, shift).toFixed(Math.max(0, -shift)),
    uncertainty: scaleBy(steps, Math.max(0, shift)),
    symbol: prefix.symbol,
  };
}

// Promises the decimal place to which a standard uncertainty is worth writing, and its digits there. Refuses
// an uncertainty that is not finite and above zero.

export interface WrittenUncertainty {
  /** The power of ten of the last digit worth writing. */
  readonly place: number;
  /** The uncertainty in steps of that digit, rounded. */
  readonly steps: number;
}

/**
 * The uncertainty to two significant digits, carried on where rounding gains one: 0.0996 is 0.10. GUM 7.2.6:
 * two digits at most are worth giving.
 *
 * @throws RangeError unless the uncertainty is finite and above 0.
 * @example twoDigitUncertainty(1.298); // { place: -1, steps: 13 }
 */
export function twoDigitUncertainty(standardUncertainty: number): WrittenUncertainty {
  if (!(standardUncertainty > 0 && standardUncertainty < Infinity)) {
    throw new RangeError(`an uncertainty to write must be above 0, got ${standardUncertainty}`);
  }
  const [digits = '', exponent = ''] = standardUncertainty.toExponential(1).split('e');
  return { place: Number(exponent) - 1, steps: Number(digits.replace('.', '')) };
}

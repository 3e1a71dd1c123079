// Promises the decimal place to which a standard uncertainty, and with it a value, is worth writing.
// Refuses an uncertainty that is not finite and above zero.

export interface WrittenUncertainty {
  /** The power of ten of the last digit worth writing. */
  readonly place: number;
  /** The uncertainty in steps of that digit, rounded. */
  readonly steps: number;
}

/**
 * The uncertainty to so many significant digits, carried on where rounding gains a digit: 0.0996 to two is
 * 0.10. GUM 7.2.6: at most two digits are worth giving.
 *
 * @throws RangeError unless the uncertainty is finite and above 0.
 * @example roundToUncertainty(1.298, 2); // { place: -1, steps: 13 }
 */
export function roundToUncertainty(
  standardUncertainty: number,
  significantDigits: 1 | 2,
): WrittenUncertainty {
  if (!(standardUncertainty > 0 && standardUncertainty < Infinity)) {
    throw new RangeError(`an uncertainty to write must be above 0, got ${standardUncertainty}`);
  }
  const [digits = '', exponent = ''] = standardUncertainty
    .toExponential(significantDigits - 1)
    .split('e');
  return {
    place: Number(exponent) - (significantDigits - 1),
    steps: Number(digits.replace('.', '')),
  };
}

// Promises the standard uncertainty of bounds whose middle is likelier than their ends. Refuses a negative
// half-width.

/**
 * u = a / sqrt(6) for bounds -/+ a: GUM 4.3.9.
 *
 * @throws RangeError when the half-width is negative or not a number.
 * @example triangularUncertainty(0.6); // 0.245
 */
export function triangularUncertainty(halfWidth: number): number {
  if (!(halfWidth >= 0)) throw new RangeError(`a half-width is 0 or more, got ${halfWidth}`);
  return halfWidth / Math.sqrt(6);
}

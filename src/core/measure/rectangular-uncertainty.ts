// Promises the standard uncertainty of bounds within which nothing is likelier than anything else. Refuses
// a negative half-width.

/**
 * u = a / sqrt(3) for bounds -/+ a: GUM 4.3.7.
 *
 * @throws RangeError when the half-width is negative or not a number.
 * @example rectangularUncertainty(15e-6); // 8.66e-6
 */
export function rectangularUncertainty(halfWidth: number): number {
  if (!(halfWidth >= 0)) throw new RangeError(`a half-width is 0 or more, got ${halfWidth}`);
  return halfWidth / Math.sqrt(3);
}

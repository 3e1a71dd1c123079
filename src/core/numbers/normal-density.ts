// Promises the standard normal density. Refuses what is not a number.

/**
 * phi(z) = exp(-z^2 / 2) / sqrt(2 pi).
 *
 * @throws RangeError when z is NaN.
 * @example normalDensity(0); // 0.3989
 */
export function normalDensity(z: number): number {
  if (Number.isNaN(z)) throw new RangeError('a normal density needs a number');
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

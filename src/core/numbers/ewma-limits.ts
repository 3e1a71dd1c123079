// Promises the band within which a moving average stays while nothing changes. Refuses a weight outside
// (0, 1] and a negative spread.

/**
 * target -/+ width s sqrt(weight / (2 - weight)), the limits long after the start: NIST/SEMATECH e-Handbook
 * 6.3.2.4, where the width is 3.
 *
 * @throws RangeError unless 0 < weight <= 1 and the spread and width are 0 or more.
 * @example ewmaLimits(50, 2.0539, 0.3).high; // 52.588
 */
export function ewmaLimits(
  target: number,
  standardDeviation: number,
  weight: number,
  width = 3,
): { low: number; high: number } {
  if (!(weight > 0 && weight <= 1)) {
    throw new RangeError(`a weight lies above 0 and up to 1, got ${weight}`);
  }
  if (!(standardDeviation >= 0 && width >= 0)) {
    throw new RangeError('a spread and a width are 0 or more');
  }
  const half = width * standardDeviation * Math.sqrt(weight / (2 - weight));
  return { low: target - half, high: target + half };
}

// Promises the next value of an exponentially weighted moving average. Refuses a weight outside (0, 1].

/**
 * weight x + (1 - weight) previous: NIST/SEMATECH e-Handbook 6.3.2.4. A larger weight follows faster.
 *
 * @throws RangeError unless 0 < weight <= 1 and both values are finite.
 * @example ewmaStep(50, 52, 0.3); // 50.6
 */
export function ewmaStep(previous: number, value: number, weight: number): number {
  if (!(weight > 0 && weight <= 1)) {
    throw new RangeError(`a weight lies above 0 and up to 1, got ${weight}`);
  }
  if (!Number.isFinite(previous) || !Number.isFinite(value)) {
    throw new RangeError('a moving average needs finite values');
  }
  return previous + weight * (value - previous);
}

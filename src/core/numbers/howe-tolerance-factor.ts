// Promises the handbook's approximate two-sided tolerance factor, good from about ten values on: at two it
// is 5 % too wide. Refuses fewer than two values.
import { chiSquaredQuantile } from './chi-squared-quantile.js';
import { normalQuantile } from './normal-quantile.js';
import { requireToleranceDesign } from './require-tolerance-design.js';

/**
 * k = sqrt( nu (1 + 1/n) z^2 / chi^2 ), with nu = n - 1, z the normal quantile at (1 + share) / 2 and chi^2
 * the chi-squared quantile at 1 - confidence: Howe (1969), in NIST/SEMATECH e-Handbook 7.2.6.3. The interval
 * mean -/+ k s holds at least `share` of all boards with this `confidence`.
 *
 * @throws RangeError unless n is whole and 2 or more and both shares lie between 0 and 1.
 * @example howeToleranceFactor(43, 0.9, 0.99); // 2.217316
 */
export function howeToleranceFactor(n: number, share: number, confidence: number): number {
  requireToleranceDesign(n, share, confidence);
  const z = normalQuantile((1 + share) / 2);
  return z * Math.sqrt(((n - 1) * (1 + 1 / n)) / chiSquaredQuantile(1 - confidence, n - 1));
}

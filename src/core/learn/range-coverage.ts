// Promises how little the span of a few good boards proves, whatever the distribution. Refuses less than one board.
import { findRoot } from '../numbers/find-root.js';
import { requireProbability } from '../numbers/require-probability.js';

/**
 * The share of all boards that lies, with this confidence, between the smallest and the largest of n:
 *
 *   n p^(n-1) - (n-1) p^n = 1 - confidence,
 *
 * the distribution-free tolerance limits of Wilks (1941; from memory). 0 for one board.
 *
 * @throws RangeError unless n is whole and 1 or more and the confidence lies between 0 and 1.
 * @example rangeCoverage(2, 0.95); // 0.0253
 */
export function rangeCoverage(n: number, confidence: number): number {
  if (!(Number.isInteger(n) && n >= 1)) throw new RangeError('a span needs one or more boards');
  requireProbability(confidence, 'a confidence');
  if (n === 1) return 0;
  return findRoot((p) => n * p ** (n - 1) - (n - 1) * p ** n - (1 - confidence), 0, 1);
}

// Promises the exact chance of drawing so many marked ones or more, without putting back. Refuses counts
// that are not whole, negative, or together over 1000.
import { binomialCoefficient } from './binomial-coefficient.js';

/**
 * P(X >= hits) when `drawn` are taken out of `marked` + `unmarked`: sums of whole numbers, divided once.
 *
 * @throws RangeError on counts that are not whole, on negative ones, and on more than 1000 in all.
 * @example hypergeometricTail(4, 4, 4, 4); // 1/70
 */
export function hypergeometricTail(
  hits: number,
  marked: number,
  unmarked: number,
  drawn: number,
): number {
  const total = binomialCoefficient(marked + unmarked, drawn);
  if (total === 0n) throw new RangeError('more are drawn than there are');
  let ways = 0n;
  for (let k = Math.max(0, hits); k <= Math.min(marked, drawn); k += 1) {
    ways += binomialCoefficient(marked, k) * binomialCoefficient(unmarked, drawn - k);
  }
  return Number(ways) / Number(total);
}

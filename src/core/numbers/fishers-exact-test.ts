// Promises the exact p-value of a two by two table with its margins given: whole numbers, divided once.
// Refuses counts that are not whole, negative, or together over 1000.
import type { Alternative } from './alternative.js';
import { binomialCoefficient } from './binomial-coefficient.js';

/** Rows are what was done, columns what was seen, as in [[pressed and closed, pressed and open], ...]. */
export type TwoByTwo = readonly [readonly [number, number], readonly [number, number]];

/**
 * Fisher (1935), The Design of Experiments, ch. 2. `greater` asks for a first cell at least as large as the
 * one seen, `less` for one at most as large; `two-sided` adds up every table no likelier than the one seen.
 * For k presses and k releases told apart perfectly the one-sided value is 1 / C(2k, k): 1/20 for three of
 * each, 1/70 for four.
 *
 * @throws RangeError on counts that are not whole, on negative ones, and on more than 1000 in all.
 * @example fishersExactTest([[3, 1], [1, 3]], 'greater'); // 17/70
 */
export function fishersExactTest(table: TwoByTwo, alternative: Alternative): number {
  const [[a, b], [c, d]] = table;
  if ([a, b, c, d].some((count) => !Number.isInteger(count) || count < 0)) {
    throw new RangeError('a table of counts holds whole numbers, 0 or more');
  }
  const waysWith = (first: number): bigint =>
    binomialCoefficient(a + b, first) * binomialCoefficient(c + d, a + c - first);
  const seen = waysWith(a);
  let extreme = 0n;
  for (let first = Math.max(0, a - d); first <= Math.min(a + b, a + c); first += 1) {
    const ways = waysWith(first);
    const counts =
      alternative === 'greater' ? first >= a : alternative === 'less' ? first <= a : ways <= seen;
    if (counts) extreme += ways;
  }
  return Number(extreme) / Number(binomialCoefficient(a + b + c + d, a + c));
}

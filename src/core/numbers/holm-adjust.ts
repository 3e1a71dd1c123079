// Promises p-values that can each be held against one level although several tests were made. Refuses
// anything outside 0 to 1.

/**
 * Holm (1979): the i-th smallest of m is multiplied by m - i + 1, is never under the one before it, and is
 * at most 1. In the order given.
 *
 * @throws RangeError on a p-value outside 0 to 1.
 * @example holmAdjust([0.01, 0.04, 0.03]); // [0.03, 0.06, 0.06]
 */
export function holmAdjust(pValues: readonly number[]): number[] {
  if (pValues.some((p) => !(p >= 0 && p <= 1))) {
    throw new RangeError('a p-value lies in 0 to 1');
  }
  const adjusted = new Array<number>(pValues.length).fill(1);
  const order = [...pValues.entries()].sort(([, p], [, q]) => p - q);
  let floor = 0;
  for (const [rank, [place, p]] of order.entries()) {
    floor = Math.min(1, Math.max(floor, p * (pValues.length - rank)));
    adjusted[place] = floor;
  }
  return adjusted;
}

// The uncertainty of a counted share, so that a benchmark never claims more than its number of trials shows.
// Refuses an empty trial.

export interface Proportion {
  readonly count: number;
  readonly of: number;
  readonly share: number;
  /** Wilson's score interval, two-sided 95 %. */
  readonly low: number;
  readonly high: number;
}

/**
 * Wilson (1927) score interval for `count` of `of`.
 * @throws RangeError when the counts are no counts of trials.
 * @example proportion(0, 100).high // 0.03699...
 */
export const proportion = (count: number, of: number): Proportion => {
  if (!Number.isInteger(count) || !Number.isInteger(of) || of <= 0 || count < 0 || count > of)
    throw new RangeError(`no proportion: ${count} of ${of}`);
  const z = 1.959964;
  const share = count / of;
  const scale = 1 + (z * z) / of;
  const middle = (share + (z * z) / (2 * of)) / scale;
  const half = (z / scale) * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of));
  return { count, of, share, low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
};

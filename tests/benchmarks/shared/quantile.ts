// Sample quantile by linear interpolation between order statistics (Hyndman and Fan, 1996, type 7).
// Refuses an empty sample and a level outside 0 to 1.

/**
 * @throws RangeError for an empty sample or a level outside [0, 1].
 * @example quantile([1, 2, 3, 4], 0.5) // 2.5
 */
export const quantile = (sample: readonly number[], level: number): number => {
  if (sample.length === 0) throw new RangeError('no quantile of an empty sample');
  if (!(level >= 0 && level <= 1)) throw new RangeError(`no quantile at level ${level}`);
  const sorted = [...sample].sort((a, b) => a - b);
  const place = (sorted.length - 1) * level;
  const below = Math.floor(place);
  const low = sorted[below] ?? 0;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] ?? low;
  return low + (high - low) * (place - below);
};

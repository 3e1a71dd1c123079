// "Did you mean": the known name closest to a mistyped one, or nothing when none is close enough to be a slip
// of the fingers.

/**
 * Optimal string alignment distance: the least number of insertions, deletions, substitutions and swaps of
 * neighbours that turn `a` into `b` (Damerau 1964, restricted form). Takes time in the product of the lengths.
 *
 * @example editDistance('tolernace', 'tolerance') // 1
 */
export const editDistance = (a: string, b: string): number => {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min(at(last, j) + 1, at(row, j - 1) + 1, at(last, j - 1) + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) best = Math.min(best, at(beforeLast, j - 2) + 1);
      row.push(best);
    }
    beforeLast = last;
    last = row;
  }
  return at(last, b.length);
};

const at = (row: readonly number[], index: number): number => row[index] ?? Infinity;

const longestCompared = 60;

/** The closest of `known`, if it is at most a third of the name's length away; ties go to the first. */
export const nearestName = (name: string, known: Iterable<string>): string | undefined => {
  if (name.length > longestCompared) return undefined;
  let nearest: string | undefined;
  let least = Math.max(1, Math.floor(name.length / 3)) + 1;
  for (const candidate of known) {
    if (candidate === name || Math.abs(candidate.length - name.length) >= least) continue;
    const distance = editDistance(name.toLowerCase(), candidate.toLowerCase());
    if (distance < least) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
};

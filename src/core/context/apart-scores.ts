// Promises a score for each member of a group that tells how far it stands apart from the others, also for
// three to five members, where a group alone cannot tell its own spread. Refuses values that are not finite.
import { median } from '../numbers/median.js';
import { modifiedZScores } from '../numbers/modified-z-scores.js';
import { requirePositive } from '../numbers/require-positive.js';
import { requireSample } from '../numbers/require-sample.js';

export interface ApartScores {
  readonly method: 'modified-z' | 'pooled-scale' | 'too-few';
  readonly centre: number;
  /** One a value; beyond 3.5 either way the value stands apart. All 0 where there are too few. */
  readonly scores: readonly number[];
}

/** Below this the median absolute deviation of a group is mostly luck: of three values it is the smaller gap. */
const leastForOwnSpread = 6;
const leastForCentre = 3;

/**
 * Six members or more: M = 0.6745 (x - median) / MAD, the modified z-score of NIST/SEMATECH e-Handbook 1.3.5.17,
 * which defines a MAD of zero. Three to five: (x - median) / s with a standard deviation pooled over all groups,
 * which a group of three cannot have of its own. Two or one: no member can stand apart.
 *
 * @param pooled standard deviation of members about their own group's median, over all groups: `robustScale`
 * @throws RangeError on a value that is not finite or a spread of nothing.
 * @example apartScores([1, 1.01, 1.3], 0.01).scores[2]; // 29
 */
export function apartScores(values: readonly number[], pooled: number): ApartScores {
  requireSample(values, 1, 'a group');
  requirePositive(pooled, 'a pooled spread');
  const centre = median(values);
  if (values.length < leastForCentre) {
    return { method: 'too-few', centre, scores: values.map(() => 0) };
  }
  if (values.length >= leastForOwnSpread) {
    return { method: 'modified-z', centre, scores: modifiedZScores(values) };
  }
  return {
    method: 'pooled-scale',
    centre,
    scores: values.map((value) => (value - centre) / pooled),
  };
}

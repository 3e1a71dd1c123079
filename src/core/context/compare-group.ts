// Compares the lines of one group with one another: which of them stands apart from the rest. A group that has
// no common value (control lines need not agree) sets nobody apart. Values are compared as ratios, to what is
// expected of each line where that is known.
import { median } from '../numbers/median.js';
import { outlierScore } from '../numbers/modified-z-scores.js';
import { alikeWithin, coverage } from './alike.js';
import { apartScores } from './apart-scores.js';
import { robustScale } from './robust-scale.js';

export interface GroupMember {
  readonly line: string;
  /** Ohm or volt, above 0. */
  readonly value: number;
  readonly standardUncertainty: number;
  /** Null where nothing is expected. */
  readonly nominal: number | null;
}

export interface GroupStanding {
  readonly line: string;
  readonly score: number;
  /** How much more it reads than the middle one, against what is expected, as a fraction. */
  readonly difference: number;
  readonly stands: 'with' | 'apart' | 'unclear';
}

export interface GroupComparison {
  readonly method: 'modified-z' | 'pooled-scale' | 'too-few' | 'no-common-value';
  readonly members: readonly GroupStanding[];
}

/** Alike lines lie within 3 %, taken as three standard deviations. Common practice, no source. */
const alikeSpread = alikeWithin / 3;

/**
 * A member stands apart when its score says so and it differs by more than alike lines may and than measuring
 * explains; it stands with the others when more than half of the group, itself included, lies that near.
 *
 * @param pooled see `pooledSpread`
 * @throws RangeError on a value that is not above 0.
 */
export const compareGroup = (
  members: readonly GroupMember[],
  pooled = pooledSpread([members]),
): GroupComparison => {
  if (members.length === 0) return { method: 'too-few', members: [] };
  const { values, centre, near, isCommon } = middleOf(members);
  const { method, scores } = apartScores(values, pooled);
  const stands = (at: number): GroupStanding['stands'] => {
    if (method === 'too-few' || !isCommon) return 'unclear';
    if (near[at]) return 'with';
    return Math.abs(scores[at] ?? 0) > outlierScore ? 'apart' : 'unclear';
  };
  return {
    method: method === 'too-few' || isCommon ? method : 'no-common-value',
    members: members.map(({ line }, at) => ({
      line,
      score: scores[at] ?? 0,
      difference: Math.exp((values[at] ?? 0) - centre) - 1,
      stands: stands(at),
    })),
  };
};

/**
 * Standard deviation of lines about the middle of their group, over all groups of a board that have a common
 * value, weighed against the spread expected of alike lines; as a logarithm, so about a fraction.
 */
export const pooledSpread = (groups: readonly (readonly GroupMember[])[]): number =>
  robustScale(groups.flatMap(innerDeviations), alikeSpread);

/** ln(value / nominal), or ln(value) for all where one of them has no nominal. */
const coordinates = (members: readonly GroupMember[]): readonly number[] => {
  const known = members.every(({ nominal }) => nominal !== null);
  return members.map(({ value, nominal, line }) => {
    if (!(value > 0)) throw new RangeError(`line ${line}: a group compares values above 0`);
    return Math.log(value) - (known ? Math.log(nominal ?? 1) : 0);
  });
};

interface Middle {
  readonly values: readonly number[];
  readonly centre: number;
  readonly near: readonly boolean[];
  /** More than half of the group reads alike. */
  readonly isCommon: boolean;
}

const middleOf = (members: readonly GroupMember[]): Middle => {
  const values = coordinates(members);
  const centre = median(values);
  const near = members.map(({ value, standardUncertainty }, at) => {
    const away = Math.abs((values[at] ?? 0) - centre);
    return away <= Math.max(Math.log1p(alikeWithin), (coverage * standardUncertainty) / value);
  });
  return { values, centre, near, isCommon: 2 * near.filter(Boolean).length > members.length };
};

/** Deviations from a group's own middle, widened for the one degree of freedom that the middle takes. */
const innerDeviations = (members: readonly GroupMember[]): readonly number[] => {
  const n = members.length;
  if (n < 2) return [];
  const { values, centre, isCommon } = middleOf(members);
  return isCommon ? values.map((value) => (value - centre) * Math.sqrt(n / (n - 1))) : [];
};

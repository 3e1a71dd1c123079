// Sorts what the boards read of one line into what can be learned from and what stands apart: a board that conducts
// where most do not, a value far from the others, a value read on another range.
import { alikeWithin, coverage } from '../context/alike.js';
import { apartScores } from '../context/apart-scores.js';
import { robustScale } from '../context/robust-scale.js';
import { median } from '../numbers/median.js';
import { outlierScore } from '../numbers/modified-z-scores.js';
import { type LineValue, readsFigure } from './line-values.js';

export interface ApartValue {
  readonly board: string;
  readonly value: number | null;
  readonly because: 'conducts' | 'conducts-not' | 'far-off' | 'other-range' | 'next-to-nothing';
}

export interface SortedLine {
  /** `undecided` where as many boards conduct as do not. */
  readonly reads: 'value' | 'overload' | 'undecided';
  /** Alike, on one range; with a value each where `reads` is `value`. */
  readonly kept: readonly LineValue[];
  /** The range they were read on, where it is known. */
  readonly range?: number;
  readonly apart: readonly ApartValue[];
}

/** Boards of one line lie within 3 % of one another, as three standard deviations. Common practice, no source. */
const boardSpread = alikeWithin / 3;

/**
 * A value is far off when its score says so and it departs by more than the usual tolerance: what good boards
 * differ by among themselves must stay in, or the limits would come out too tight.
 *
 * @param usual the tolerance the line has so far, as a fraction
 * @param pooled see `pooledDeparture`
 */
export const sortLine = (
  values: readonly LineValue[],
  usual: number,
  pooled: number,
): SortedLine => {
  const silent = values.filter(({ value }) => value === null);
  const conducting = values.filter(({ value }) => value !== null);
  const tell = (
    some: readonly LineValue[],
    because: ApartValue['because'],
  ): readonly ApartValue[] => some.map(({ board, value }) => ({ board, value, because }));
  if (silent.length === conducting.length) return { reads: 'undecided', kept: [], apart: [] };
  if (silent.length > conducting.length) {
    return { reads: 'overload', kept: silent, apart: tell(conducting, 'conducts') };
  }
  const positive = conducting.filter(readsFigure);
  const range = commonRange(positive);
  const onRange = positive.filter((one) => one.range === undefined || one.range === range);
  const { near, far } = splitFar(onRange, usual, pooled);
  return {
    reads: 'value',
    kept: near,
    ...(range === undefined ? {} : { range }),
    apart: [
      ...tell(silent, 'conducts-not'),
      ...tell(without(conducting, positive), 'next-to-nothing'),
      ...tell(without(positive, onRange), 'other-range'),
      ...tell(far, 'far-off'),
    ],
  };
};

const without = (all: readonly LineValue[], some: readonly LineValue[]): readonly LineValue[] =>
  all.filter((one) => !some.includes(one));

/** The range most boards were read on; undefined where none is known. */
const commonRange = (values: readonly LineValue[]): number | undefined => {
  const counts = new Map<number, number>();
  for (const { range } of values) {
    if (range !== undefined) counts.set(range, (counts.get(range) ?? 0) + 1);
  }
  return [...counts].sort(([a, m], [b, n]) => n - m || a - b)[0]?.[0];
};

const splitFar = (
  values: readonly LineValue[],
  usual: number,
  pooled: number,
): { near: readonly LineValue[]; far: readonly LineValue[] } => {
  if (values.length === 0) return { near: [], far: [] };
  const logs = values.map(({ value }) => Math.log(value ?? 1));
  const { centre, scores } = apartScores(logs, pooled);
  const isFar = values.map(({ value, standardUncertainty }, at) => {
    const away = Math.abs((logs[at] ?? 0) - centre);
    const doubt = (coverage * (standardUncertainty ?? 0)) / (value ?? 1);
    const allowed = Math.max(Math.log1p(usual), doubt);
    return Math.abs(scores[at] ?? 0) > outlierScore && away > allowed;
  });
  return {
    near: values.filter((_, at) => !isFar[at]),
    far: values.filter((_, at) => isFar[at]),
  };
};

/** Standard deviation of boards about the middle of their line, over all lines of three boards and more. */
export const pooledDeparture = (lines: Iterable<readonly LineValue[]>): number =>
  robustScale([...lines].flatMap(departuresOf), boardSpread);

/** As logarithms, widened for the one degree of freedom that the middle takes. */
const departuresOf = (values: readonly LineValue[]): readonly number[] => {
  const logs = values.filter(readsFigure).map(({ value }) => Math.log(value));
  if (logs.length < 3) return [];
  const centre = median(logs);
  return logs.map((log) => (log - centre) * Math.sqrt(logs.length / (logs.length - 1)));
};

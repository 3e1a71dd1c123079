// From good boards to a profile that expects what they read. Boards and pins that stand apart are told, and left out
// unless they are to be kept; lines of which nothing was learned keep what they had. Refuses boards that cannot be
// put together, all of them at once.
import { median } from '../numbers/median.js';
import type { Expectation, Profile } from '../profile/profile-format.js';
import type { Board } from './board.js';
import { type LearnedLine, learnValue } from './learn-line.js';
import { type LineValue, lineValues, type StrayPin } from './line-values.js';
import { type OutlyingBoard, outlyingBoards } from './outlying-boards.js';
import { howLineWasLearned, howProfileWasLearned } from './provenance-words.js';
import { type BoardRefusal, refuseBoards, type Wanted } from './refuse-boards.js';
import { pooledDeparture, type SortedLine, sortLine } from './sort-line.js';
import { usualTolerance } from './usual-tolerance.js';

export interface LearnOptions extends Wanted {
  readonly outliers: 'leave-out' | 'keep';
  /** Who learned it and on which day (ISO 8601), for the provenance. */
  readonly by: string;
  readonly date: string;
  /** See `createToleranceFactors`. */
  readonly factor: (boards: number) => number;
  /** The new profile's id; the old one's where it is left out. */
  readonly id?: string;
}

export interface Learned {
  readonly profile: Profile;
  /** Every line but the grounds, in the profile's order. */
  readonly lines: readonly LearnedLine[];
  readonly outlyingBoards: readonly OutlyingBoard[];
  readonly strayPins: readonly StrayPin[];
  /** Boards that were learned from. */
  readonly boards: readonly string[];
}

export type LearnOutcome =
  | { readonly ok: true; readonly learned: Learned }
  | { readonly ok: false; readonly refused: readonly BoardRefusal[] };

/** @throws RangeError when there is no board, or two of one name. */
export const learnProfile = (
  boards: readonly Board[],
  profile: Profile,
  options: LearnOptions,
): LearnOutcome => {
  if (boards.length === 0) throw new RangeError('learning needs one good board or more');
  if (new Set(boards.map(({ name }) => name)).size < boards.length) {
    throw new RangeError('boards to learn from need names of their own');
  }
  const refused = refuseBoards(boards, profile, options);
  if (refused.length > 0) return { ok: false, refused };

  const names = learnableLines(profile);
  const usual = (line: string): number => usualTolerance(profile, line, options.function);
  const all = lineValues(boards, new Set(names));
  const outlying = outlyingBoards(
    boards.map(({ name }) => name),
    all.values,
    usual,
  );
  const out = new Set(options.outliers === 'keep' ? [] : leftOut(outlying));
  const used = boards.filter(({ name }) => !out.has(name));
  const kept = lineValues(used, new Set(names));
  const lines = learnLines(names, kept.values, usual, options);
  return {
    ok: true,
    learned: {
      profile: withLearned(profile, lines, used, options),
      lines,
      outlyingBoards: outlying,
      strayPins: all.strays,
      boards: used.map(({ name }) => name),
    },
  };
};

/** Of two boards that disagree neither is left out. */
const leftOut = (outlying: readonly OutlyingBoard[]): readonly string[] =>
  outlying.filter(({ because }) => because !== 'two-disagree').map(({ board }) => board);

const learnableLines = ({ lines, connector }: Profile): readonly string[] => {
  const walked = new Set(connector.pins.map(({ line }) => line));
  return Object.keys(lines).filter((line) => walked.has(line) && lines[line]?.kind !== 'ground');
};

const learnLines = (
  names: readonly string[],
  values: ReadonlyMap<string, readonly LineValue[]>,
  usual: (line: string) => number,
  { outliers, factor }: LearnOptions,
): readonly LearnedLine[] => {
  const pooled = pooledDeparture(values.values());
  return names.map((line): LearnedLine => {
    const read = values.get(line) ?? [];
    if (read.length === 0) return { line, outcome: 'kept', because: 'not-read', apart: [] };
    const sorted = sortLine(read, usual(line), pooled);
    const { apart } = sorted;
    if (sorted.reads === 'undecided') return { line, outcome: 'kept', because: 'undecided', apart };
    if (sorted.reads === 'overload') {
      return { line, outcome: 'overload', boards: sorted.kept.length, apart };
    }
    const learnedFrom = outliers === 'keep' ? withFarOff(sorted, read) : sorted.kept;
    const figures = learnedFrom.flatMap(({ value }) => (value === null ? [] : [value]));
    if (figures.length === 0) return { line, outcome: 'kept', because: 'undecided', apart };
    const rule = { usual: usual(line), relativeUncertainty: doubtOf(learnedFrom), factor };
    const range = sorted.range === undefined ? {} : { range: sorted.range };
    return { line, outcome: 'value', ...learnValue(figures, rule), ...range, apart };
  });
};

/** Kept outliers are values that are far off; another range or function cannot be put together with the rest. */
const withFarOff = ({ kept, apart }: SortedLine, read: readonly LineValue[]): LineValue[] => {
  const far = new Set(
    apart.flatMap(({ board, because }) => (because === 'far-off' ? [board] : [])),
  );
  return read.filter((one) => kept.includes(one) || far.has(one.board));
};

const doubtOf = (values: readonly LineValue[]): number => {
  const known = values.flatMap(({ value, standardUncertainty: u }) =>
    value === null || u === null ? [] : [u / value],
  );
  return known.length === 0 ? 0 : median(known);
};

const withLearned = (
  profile: Profile,
  learned: readonly LearnedLine[],
  boards: readonly Board[],
  options: LearnOptions,
): Profile => {
  const { function: measure, by, date, id } = options;
  const lines = { ...profile.lines };
  for (const one of learned) {
    const line = lines[one.line];
    if (line === undefined || one.outcome === 'kept') continue;
    const expected = expectationOf(one, options);
    lines[one.line] = { ...line, expect: { ...line.expect, [measure]: expected } };
  }
  const isDemo = profile.demo === true || boards.some(({ simulated }) => simulated);
  return {
    ...profile,
    ...(id === undefined ? {} : { id }),
    ...(isDemo ? { demo: true } : {}),
    provenance: {
      ...profile.provenance,
      by,
      date,
      how: howProfileWasLearned(learned, boards.length, options, profile.provenance.how),
    },
    lines,
  };
};

const expectationOf = (
  one: Exclude<LearnedLine, { outcome: 'kept' }>,
  { polarity }: LearnOptions,
): Expectation => {
  if (one.outcome === 'overload') return 'overload';
  const { range } = one;
  return {
    nominal: one.nominal,
    tolerance: one.tolerance,
    polarity,
    ...(range === undefined ? {} : { range }),
    from: { boards: one.boards, how: howLineWasLearned(one) },
  };
};

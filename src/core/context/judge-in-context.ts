// Judges every pin read so far in the light of all the others: by limits shifted to this meter, and, where nothing
// is expected of a line, by its neighbours. A mate makes a verdict more or less believed; it never makes one.
import type { ExpectedBounds, nextActions, Verdict } from '../events.js';
import type { Plan, PlannedPin } from '../profile/plan.js';
import { compareMates, type MateComparison } from './compare-mates.js';
import { estimateShift, type Shift, type Shifts } from './estimate-shift.js';
import { judgeWithoutReference, type ReferenceFree } from './judge-without-reference.js';
import { linesRead } from './lines-read.js';
import { isMeasured, isOverloaded, type ReadPin } from './read-pin.js';
import { shiftedExpectation, shiftFor } from './shifted-expectation.js';
import { weighMate } from './weigh-mate.js';

interface Judged {
  readonly verdict: Verdict;
  readonly confidence: number;
  readonly expected: ExpectedBounds;
  readonly advice?: (typeof nextActions)[number];
}

/** How one pin is judged by itself: the walk's own rule. */
export type JudgePin = (
  pin: PlannedPin,
  observed:
    | { readonly value: number; readonly standardUncertainty: number }
    | { readonly overload: true },
) => Judged;

export interface ContextJudgement extends Judged {
  readonly index: number;
  readonly pin: string;
  readonly line: string;
  /** `expected` holds the limits shifted by this. */
  readonly shift: Shift | null;
  /** Null for a line without a mate. */
  readonly mate: MateComparison | null;
  /** For a line of which nothing is expected. */
  readonly neighbours: ReferenceFree | null;
}

export interface BoardInContext {
  readonly shifts: Shifts;
  /** Every pin that was read, in walking order. */
  readonly judgements: readonly ContextJudgement[];
}

/** @param pins one a planned pin, in walking order; a record of the walk fits as it is */
export const judgeInContext = (
  pins: readonly ReadPin[],
  plan: Plan,
  judge: JudgePin,
): BoardInContext => {
  const shifts = estimateShift(pins, plan);
  const alone = plan.pins.map((pin) => judgeShifted(pin, pins[pin.index], shifts, judge));
  const needsNeighbours = plan.pins.some(({ expected }) => expected === null);
  const opinions = needsNeighbours ? judgeWithoutReference(pins, plan) : [];
  const byNeighbours = new Map(opinions.map((opinion) => [opinion.index, opinion]));
  const lines = linesRead(plan, pins);
  const judgements = plan.pins.flatMap((pin): readonly ContextJudgement[] => {
    const own = alone[pin.index];
    const read = pins[pin.index];
    if (own === undefined || own === null || read === undefined) return [];
    const mateLine = pin.mate === undefined ? undefined : lines.get(pin.mate);
    const mate =
      mateLine === undefined ? null : compareMates([pin, read], [mateLine.planned, mateLine.read]);
    const mateAlone = mateLine === undefined ? null : alone[mateLine.planned.index];
    const neighbours = pin.expected === null ? (byNeighbours.get(pin.index) ?? null) : null;
    const { index, pin: name, line } = pin;
    return [
      {
        index,
        pin: name,
        line,
        ...withMate(withNeighbours(own, neighbours), mate, mateAlone ?? null),
        shift: shiftFor(pin, shifts),
        mate,
        neighbours,
      },
    ];
  });
  return { shifts, judgements };
};

/** One pin by its shifted limits, their doubt added to the reading's own; null where nothing was read. */
export const judgeShifted = (
  pin: PlannedPin,
  read: ReadPin | undefined,
  shifts: Shifts,
  judge: JudgePin,
): Judged | null => {
  if (isOverloaded(read)) return judge(pin, { overload: true });
  if (!isMeasured(read)) return null;
  const shifted = shiftedExpectation(pin.expected, shiftFor(pin, shifts));
  return judge(
    { ...pin, expected: shifted.expected },
    {
      value: read.value,
      standardUncertainty: Math.hypot(read.standardUncertainty ?? 0, shifted.standardUncertainty),
    },
  );
};

const withNeighbours = (own: Judged, neighbours: ReferenceFree | null): Judged => {
  if (neighbours === null || neighbours.verdict === null) return own;
  const { verdict, confidence } = neighbours;
  const { advice: _, ...rest } = own;
  return verdict === 'unsure'
    ? { ...rest, verdict, confidence, advice: 'compare-mate' }
    : { ...rest, verdict, confidence };
};

const withMate = (own: Judged, mate: MateComparison | null, mateAlone: Judged | null): Judged => {
  if (own.verdict === 'unsure' && own.advice === 'compare-mate') {
    const isWaiting = mate?.finding === 'not-comparable' && mate.because === 'not-read';
    return isWaiting ? own : { ...own, advice: 'retake' };
  }
  if (mate === null) return own;
  const isPairNormal = own.verdict === 'normal' && mateAlone?.verdict === 'normal';
  if (!isPairNormal || mate.finding !== 'alike' || mate.both !== 'value') return own;
  const confidence = weighMate(inside(own.confidence), inside(mateAlone.confidence), mate);
  return { ...own, confidence: Math.max(own.confidence, confidence) };
};

/** A probability of exactly 0 or 1 leaves nothing to weigh. */
const inside = (probability: number): number => Math.min(1 - 1e-9, Math.max(1e-9, probability));

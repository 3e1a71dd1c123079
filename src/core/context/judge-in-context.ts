// Judges pins in the light of all the others that were read: by limits shifted to this meter, and, where nothing
// is expected of a line, by its neighbours. A mate makes a verdict more or less believed; it never makes one.

import type { Plan, PlannedPin } from '../profile/plan.js';
import type { ExpectedBounds, Verdict } from '../verdict.js';
import type { Bounds, Observed } from '../walk/judge.js';
import { compareMates, type MateComparison } from './compare-mates.js';
import type { Shift, ShiftEstimate } from './estimate-shift.js';
import { judgeWithoutReference, type ReferenceFree } from './judge-without-reference.js';
import { type LineRead, lineRead, linesRead } from './lines-read.js';
import { isMeasured, isOverloaded, type ReadPin } from './read-pin.js';
import { shiftedExpectation, shiftFor, untoldFor } from './shifted-expectation.js';
import { weighMate } from './weigh-mate.js';

interface Judged {
  readonly verdict: Verdict;
  readonly confidence: number;
  readonly expected: ExpectedBounds;
}

/** How one pin is judged by itself: the walk's own rule. */
export type JudgePin = (bounds: Bounds, observed: Observed) => Judged;

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

/**
 * Every pin that was read, in walking order.
 * @param pins one a planned pin, in walking order; a record of the walk fits as it is
 */
export const judgeInContext = (
  pins: readonly ReadPin[],
  plan: Plan,
  shifts: ShiftEstimate,
  judge: JudgePin,
): readonly ContextJudgement[] => {
  const lines = linesRead(plan, pins);
  const board = boardOf(pins, plan, shifts, judge, (line) => lines.get(line));
  return plan.pins.flatMap((pin) => judgeAmong(pin, board) ?? []);
};

/** One pin, the meter's shift being known; null where nothing was read that can be judged. */
export const judgePinInContext = (
  pin: PlannedPin,
  pins: readonly ReadPin[],
  plan: Plan,
  shifts: ShiftEstimate,
  judge: JudgePin,
): ContextJudgement | null =>
  judgeAmong(
    pin,
    boardOf(pins, plan, shifts, judge, (line) => lineRead(plan, pins, line)),
  );

interface Board {
  readonly pins: readonly ReadPin[];
  readonly shifts: ShiftEstimate;
  readonly judge: JudgePin;
  readonly lineOf: (line: string) => LineRead | undefined;
  readonly byNeighbours: ReadonlyMap<number, ReferenceFree>;
}

const boardOf = (
  pins: readonly ReadPin[],
  plan: Plan,
  shifts: ShiftEstimate,
  judge: JudgePin,
  lineOf: Board['lineOf'],
): Board => {
  const needsNeighbours = plan.pins.some(({ expected }) => expected === null);
  const opinions = needsNeighbours ? judgeWithoutReference(pins, plan) : [];
  const byNeighbours = new Map(opinions.map((opinion) => [opinion.index, opinion]));
  return { pins, shifts, judge, lineOf, byNeighbours };
};

const judgeAmong = (
  pin: PlannedPin,
  { pins, shifts, judge, lineOf, byNeighbours }: Board,
): ContextJudgement | null => {
  const read = pins[pin.index];
  const own = judgeShifted(pin, read, shifts, judge);
  if (own === null) return null;
  const other = pin.mate === undefined ? undefined : lineOf(pin.mate);
  const mate = other === undefined ? null : compareMates([pin, read], [other.planned, other.read]);
  const mateAlone =
    other === undefined
      ? null
      : judgeShifted(other.planned, pins[other.planned.index], shifts, judge);
  const neighbours = pin.expected === null ? (byNeighbours.get(pin.index) ?? null) : null;
  const { index, pin: name, line } = pin;
  return {
    index,
    pin: name,
    line,
    ...withMate(withNeighbours(own, neighbours), mate, mateAlone),
    shift: shiftFor(pin, shifts),
    mate,
    neighbours,
  };
};

/**
 * One pin by its shifted limits, their doubt added to the reading's own; where no shift can be told, by the limits as
 * they are and by those of the shift there may be, each as far as it is believed. Null where nothing was read.
 */
export const judgeShifted = (
  pin: PlannedPin,
  read: ReadPin | undefined,
  shifts: Omit<ShiftEstimate, 'beliefs'>,
  judge: JudgePin,
): Judged | null => {
  if (isOverloaded(read)) return judge(pin, { overload: true });
  if (!isMeasured(read)) return null;
  const { value, halfWidth } = read;
  // The donor's reading is no surer than the patient's: as two independent readings (GUM 5.1.2).
  const own = Math.hypot(read.standardUncertainty ?? 0, pin.fromDonor?.standardUncertainty ?? 0);
  const shifted = shiftedExpectation(pin.expected, shiftFor(pin, shifts));
  const untold = untoldFor(pin, shifts);
  const instead = untold === null ? null : shiftedExpectation(pin.expected, untold.shift);
  return judge(
    { expected: shifted.expected, shortLimit: pin.shortLimit, openLimit: pin.openLimit },
    {
      value,
      standardUncertainty: Math.hypot(own, shifted.standardUncertainty),
      ...(halfWidth === undefined ? {} : { halfWidth }),
      ...(untold === null || instead === null
        ? {}
        : {
            perhaps: {
              expected: instead.expected,
              standardUncertainty: Math.hypot(own, instead.standardUncertainty),
              probability: untold.probability,
            },
          }),
    },
  );
};

/** A line that conducts and that nothing speaks against is mostly sound. Common practice, no source. */
const unopposed = 0.8;

const withNeighbours = (own: Judged, neighbours: ReferenceFree | null): Judged => {
  if (neighbours === null) return own;
  const { verdict, confidence } = neighbours;
  if (verdict !== null) return { ...own, verdict, confidence };
  return own.verdict === 'normal'
    ? { ...own, confidence: Math.min(own.confidence, unopposed) }
    : own;
};

const withMate = (own: Judged, mate: MateComparison | null, mateAlone: Judged | null): Judged => {
  if (mate === null) return own;
  const isPairNormal = own.verdict === 'normal' && mateAlone?.verdict === 'normal';
  if (!isPairNormal || mate.finding !== 'alike' || mate.both !== 'value') return own;
  if (own.expected === null) return own;
  const confidence = weighMate(inside(own.confidence), inside(mateAlone.confidence), mate);
  return { ...own, confidence: Math.max(own.confidence, confidence) };
};

/** A probability of exactly 0 or 1 leaves nothing to weigh. */
const inside = (probability: number): number => Math.min(1 - 1e-9, Math.max(1e-9, probability));

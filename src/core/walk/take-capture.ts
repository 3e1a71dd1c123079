// What a capture changes: it is laid along the connector in every way that is possible, and waits for its name.
// A capture with the number of one before it is that one revised: its readings went on creeping.
import type { EventOf } from '../events.js';
import { walksDonor } from '../profile/donor.js';
import type { PlannedPin } from '../profile/plan.js';
import { hasMoved } from '../recheck/judge-recheck.js';
import { alignCapture } from './align.js';
import { calledBack } from './call-back.js';
import { type Contact, forgetGap, leaveCaptured, restOn } from './contact.js';
import type { GapView } from './gap-likelihood.js';
import type { CalledBack } from './in-turns.js';
import { isNormal } from './judge.js';
import { judgeAlone, judgeHere, readIn } from './judge-here.js';
import { openProbability } from './likelihood.js';
import { findNaming, type Naming, nameCaptures, standingOf, surelyNamed } from './naming.js';
import { learnNoise } from './noise.js';
import { learnLift, type RangingDelay } from './ranging.js';
import { revisedFrom } from './revise.js';
import type { Capture, WalkState } from './state.js';
import { type Alignment, mergeWays, moveAll, waitsFor, weighWays } from './ways.js';

export const takeCapture = (state: WalkState, capture: EventOf<'touch-captured'>): WalkState => {
  const { value, touch } = capture;
  if (value === undefined) return takeAnswer(state, capture);
  const { latest } = state;
  const revises = latest?.capture === touch;
  const from = revises ? latest.alignment : mergeWays(state.alignment);
  const view = revises ? latest.view : viewOf(state);
  const called = revises ? latest.called : calledBack(state);
  const alignment = alignCapture(
    from,
    state.plan,
    {
      capture: touch,
      value,
      deviation: capture.deviation ?? 0,
      view,
      doubted: !standingOf(from).sure,
      called,
      read: (index) => state.pins[index]?.value ?? null,
      beliefs: state.shifts.beliefs,
    },
    normalityOf(state, capture),
  );
  const namings = nameCaptures(alignment);
  const others = state.pending.filter(
    (known) => known.touch !== touch && (revises || isWorthKeeping(state.alignment, from, known)),
  );
  const next: WalkState = {
    ...state,
    nextTouch: Math.max(state.nextTouch, touch + 1),
    alignment,
    latest: { capture: touch, alignment: from, view, called },
    pending: [...others, capture],
    named: revises ? state.named.filter((known) => known.capture.touch !== touch) : state.named,
    hushed: false,
    calls:
      called === null || revises
        ? state.calls
        : { ...state.calls, unfollowed: unfollowedAfter(alignment, called) },
    contact: onCaptured(state, touch, value),
    trustedStep: Math.max(state.trustedStep, capture.coarseStep ?? 0),
    noise: revises ? state.noise : learnFrom(state, capture, value),
    ranging: revises ? state.ranging : afterLift(namings[0], value, view, walksDonor(state.plan)),
  };
  return {
    ...next,
    pending: next.pending.filter((known) => !saysNothingNew(next, namings, known)),
  };
};

/** How many calls were not followed by now: the probe went elsewhere, as far as that is known. */
const unfollowedAfter = (alignment: Alignment, { unfollowed }: CalledBack): number => {
  let total = 0;
  let came = 0;
  let elsewhere = 0;
  for (const { weight, book } of alignment) {
    const share = Math.exp(weight);
    total += share;
    if (book?.role === 'return') came += share;
    else if (book?.role !== 'slip') elsewhere += share;
  }
  if (came >= surelyNamed * total) return 0;
  return elsewhere >= surelyNamed * total ? unfollowed + 1 : unfollowed;
};

/**
 * False where nothing can tell any more which pin a capture belonged to, and no pin is nearly sure to be it: it stays
 * without a name.
 */
const isWorthKeeping = (alignment: Alignment, merged: Alignment, { touch }: Capture): boolean => {
  const naming = findNaming(nameCaptures(merged), merged, touch);
  if (naming === null || naming.probability < surelyNamed) return naming !== null;
  const known = findNaming(nameCaptures(alignment), alignment, touch);
  return known !== null && known.probability >= namedAtLast;
};

/** Probability with which a capture is named once nothing more can be learned of it (design decision). */
const namedAtLast = 0.95;

/** In a recheck an untouched line that reads otherwise than before is touched again before it is believed. */
const isMovedControl = (
  { recheck, plan }: WalkState,
  pin: string,
  { value, standardUncertainty }: Capture,
): boolean =>
  recheck !== null &&
  value !== undefined &&
  hasMoved(recheck, plan.function, pin, { value, standardUncertainty });

/** Many ways lead to the same few pins: each pin is judged once. */
const normalityOf = (state: WalkState, capture: Capture): ((pin: PlannedPin) => number) => {
  const known = new Map<PlannedPin, number>();
  const read = readIn(capture, state);
  return (pin) => {
    if (capture.wobble === true) return 0;
    // Whatever a donor reads of which nothing is expected, it is what the patient is held against.
    if (pin.board === 'donor' && pin.expected === null) return 1;
    let normality = known.get(pin);
    if (normality === undefined) {
      const alone = judgeAlone(state, pin, read);
      // Where something is expected, the lines beside it never change a verdict.
      const judged = pin.expected === null ? judgeHere(state, pin, read) : alone;
      const normal = isNormal(judged) && !isMovedControl(state, pin.pin, capture);
      normality = normal ? alone.confidence : 0;
      known.set(pin, normality);
    }
    return normality;
  };
};

const takeAnswer = (state: WalkState, capture: Capture): WalkState => ({
  ...state,
  pending: [...state.pending, capture],
  nextTouch: capture.touch + 1,
  latest: null,
  alignment: weighWays(
    moveAll(state.alignment, (way) => {
      const index = waitsFor(way);
      const book = { capture: capture.touch, index, role: 'answer' as const, before: way.book };
      return { ...way, index, stage: 'done', doubt: 0, value: null, deviation: 0, led: null, book };
    }),
    ({ index }) => openProbability(state.plan.pins[index]),
  ),
  contact: forgetGap(state.contact),
});

/** The probe rests on what was captured, or has just left it. */
const onCaptured = ({ contact }: WalkState, touch: number, value: number): Contact =>
  contact.air?.left == null || contact.touch !== null
    ? restOn(contact, touch, value)
    : leaveCaptured(contact, touch, value, contact.air);

export const viewOf = ({ contact, ranging }: WalkState): GapView => {
  const left = contact.air?.left ?? null;
  return {
    gap: left?.gap ?? contact.gap,
    periodS: contact.clock.periodS,
    landing: left?.landing ?? contact.touch?.creep.first ?? null,
    ranging,
  };
};

/** A touch of something else entirely was no slip: the overload before it tells how long the meter ranges. */
const afterLift = (
  naming: Naming | undefined,
  value: number,
  { gap, periodS, ranging }: GapView,
  over: boolean,
): RangingDelay => {
  const { level, offS, brush } = gap;
  if (level === null || offS === null || offS === 0 || brush !== null) return ranging;
  if (Math.abs(value - level) < 0.1 * Math.max(Math.abs(value), Math.abs(level))) return ranging;
  const surely = naming?.role === 'first' && naming.probability >= surelyNamed;
  return surely ? learnLift(ranging, offS, periodS, over) : ranging;
};

/**
 * After a slip the line is read once more; that is news only where it reads otherwise, and only as long as
 * nothing newer was read there.
 */
const saysNothingNew = (
  state: WalkState,
  namings: readonly Naming[],
  capture: Capture,
): boolean => {
  const naming = findNaming(namings, state.alignment, capture.touch);
  if (naming?.role !== 'slip' || naming.probability < surelyNamed) return false;
  if (capture.value === undefined || state.nextTouch > capture.touch + 1) return true;
  const known = lastRead(state, namings, naming.index, capture.touch);
  if (known === null) return false;
  return (
    Math.abs(known - capture.value) <=
    Math.max(revisedFrom * Math.abs(known), 2 * capture.resolution)
  );
};

/** What the pin at a place read before a capture, told or still pending. */
const lastRead = (
  { alignment, pending, pins }: WalkState,
  namings: readonly Naming[],
  index: number,
  before: number,
): number | null => {
  const waiting = pending.findLast(
    ({ touch }) => touch < before && findNaming(namings, alignment, touch)?.index === index,
  );
  return waiting?.value ?? pins[index]?.value ?? null;
};

const learnFrom = (state: WalkState, capture: Capture, level: number): WalkState['noise'] =>
  capture.wobble === true
    ? state.noise
    : learnNoise(state.noise, {
        residualSquares: capture.residualSquares,
        level,
        n: capture.readings,
        resolution: capture.resolution,
      });

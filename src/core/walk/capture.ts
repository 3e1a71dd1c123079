// Decides that a touch is captured: it has settled, and the verdict can no longer change or will not become
// surer by waiting.
import type { EventOf } from '../events.js';
import { captureUncertainty } from './capture-uncertainty.js';
import { coarseStep, resolutionAt } from './display-step.js';
import { checkGround } from './ground-check.js';
import { leastConfidence } from './judge.js';
import { judgeAlone, readIn } from './judge-here.js';
import { mayBeReply } from './pad-ear.js';
import { takeProbed } from './probe.js';
import { readTouch } from './read-touch.js';
import { revisedCapture } from './revise.js';
import { atDeparture, mayHaveSettled, type Settle } from './settle.js';
import type { WalkState } from './state.js';
import { mayBeTap } from './tap.js';
import { tellCaptures, tellPlace } from './tell.js';
import type { Teller } from './teller.js';
import type { Touch } from './touch.js';
import { contactFloor } from './usable.js';
import { pinInReach } from './whereabouts.js';

/** How long a settled touch may wait for a verdict near a limit to become sure, seconds. */
const patienceS = 1;
/** Under this share of the whole uncertainty, more readings cannot make the verdict surer. */
const improvableShare = 0.5;

export const captureIfSettled = (teller: Teller): void => {
  const { state } = teller;
  const { touch } = state.contact;
  if (state.stage === 'closed') return;
  if (touch === null) {
    const revised = revisedCapture(state);
    if (revised !== null) take(teller, revised);
    return;
  }
  if (state.stage === 'finished' && state.probing === null) return;
  const captured = touchToCapture(state);
  if (captured === null) return;
  if (state.stage === 'ground-check') checkGround(teller, captured);
  else if (state.probing !== null) takeProbed(teller, captured);
  else take(teller, captured);
};

/** The present touch, where nothing more is waited for; else null. */
export const touchToCapture = (state: WalkState): EventOf<'touch-captured'> | null => {
  const { touch } = state.contact;
  if (touch === null || !isWorthALook(state)) return null;
  const seen = readTouch(state);
  if (seen.phase !== 'settled' && seen.phase !== 'wobbling') return null;
  if (mayBeReply(state, seen.level)) return null;
  const captured = captureOf(state, touch, seen);
  const isEnough =
    state.stage === 'ground-check' ||
    seen.phase === 'wobbling' ||
    isWorthNaming(state, seen, captured);
  return isEnough ? captured : null;
};

/** A touch that was left a moment ago: what it showed so far is all that comes. @param before as it was then. */
export const captureLeft = (teller: Teller, before: WalkState): void => {
  const { touch } = before.contact;
  const { stage, probing } = teller.state;
  if (touch === null || stage !== 'walking' || probing !== null || !wasHeld(teller.state)) return;
  const seen = readTouch(before, atDeparture);
  if (seen.phase !== 'settled' || mayBeReply(before, seen.level)) return;
  if (mayBeTap(before, seen.level)) return;
  take(teller, { ...captureOf(before, touch, seen), t: teller.state.t });
};

/** The probe has just left something that was held long enough for a capture and got none. */
export const wasHeld = ({ contact: { air, ended } }: WalkState): boolean => {
  const touch = ended.at(-1);
  if (air?.left == null || touch === undefined) return false;
  return touch.to - touch.from >= atDeparture.spanS;
};

/** False where no reading of the touch so far can have settled anything. */
export const isWorthALook = ({ contact, noise, plan }: WalkState): boolean =>
  contact.touch !== null &&
  mayHaveSettled(contact, contact.touch, noise, contactFloor(plan.function));

/** The technician answered that the line is open. */
export const captureAnsweredOpen = (teller: Teller, t: number): void => {
  const { state } = teller;
  const takeIt = state.probing === null ? take : takeProbed;
  takeIt(teller, {
    type: 'touch-captured',
    t,
    touch: state.nextTouch,
    overload: true,
    standardUncertainty: null,
    residualSquares: 0,
    readings: 0,
    resolution: resolutionAt(state, 0),
    from: state.contact.air?.from ?? t,
    to: t,
  });
};

const take = (teller: Teller, captured: EventOf<'touch-captured'>): void => {
  const { question } = teller.state;
  const { t, value } = captured;
  if (question?.question === 'open' && value !== undefined) {
    const { pin } = question;
    teller.tell({ type: 'question-answered', t, question: 'open', pin, by: 'contact' });
  }
  teller.tell(captured);
  tellCaptures(teller, t, 'fits-better');
  tellPlace(teller, t, false);
};

type Seen = Extract<Settle, { level: number }>;

const captureOf = (
  state: WalkState,
  { creep, display }: Touch,
  seen: Seen,
): EventOf<'touch-captured'> => {
  const { range } = display;
  const coarse = coarseStep(state, creep.last);
  const wobble = seen.phase === 'wobbling';
  const deviation = wobble ? seen.scatter : seen.levelDeviation;
  const resolution = resolutionAt(state, seen.level);
  return {
    type: 'touch-captured',
    t: state.t,
    touch: state.nextTouch,
    value: seen.level,
    ...(wobble ? { wobble: true as const } : {}),
    standardUncertainty: captureUncertainty(state.accuracy, {
      value: seen.level,
      range,
      resolution,
      deviation,
      leads: state.leads,
    }),
    deviation,
    residualSquares: seen.residualSquares,
    readings: seen.used,
    ...(range === undefined ? {} : { range }),
    resolution,
    ...(coarse === null ? {} : { coarseStep: coarse.step }),
    from: creep.startT,
    to: creep.lastT,
  };
};

const isWorthNaming = (
  state: WalkState,
  seen: Seen,
  captured: EventOf<'touch-captured'>,
): boolean => {
  const { value, standardUncertainty, from, to } = captured;
  if (value === undefined || standardUncertainty === null) return true;
  if (mayBeTap(state, value)) return false;
  const pin = pinInReach(state);
  if (pin === undefined) return true;
  return (
    judgeAlone(state, pin, readIn(captured, state)).confidence >= leastConfidence ||
    seen.levelDeviation < improvableShare * standardUncertainty ||
    to - from >= patienceS
  );
};

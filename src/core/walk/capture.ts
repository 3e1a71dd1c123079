// Decides that a touch is captured: it has settled, and the verdict can no longer change or will not become
// surer by waiting.
import type { EventOf } from '../events.js';
import type { PlannedPin } from '../profile/plan.js';
import { siUnit } from '../reading.js';
import { inferResolution } from './accuracy.js';
import { captureUncertainty } from './capture-uncertainty.js';
import { gapLikelihood } from './gap-likelihood.js';
import { judge, leastConfidence } from './judge.js';

import { noiseAt } from './noise.js';
import { watched } from './rest.js';
import { type Settle, settle, settleTolerance } from './settle.js';
import { likeliestWay, type WalkState, waitsFor } from './state.js';
import { viewOf } from './take-capture.js';
import { isGround, mayBeTap } from './tap.js';
import { tellCaptures, tellPlace } from './tell.js';
import type { Teller } from './teller.js';
import { contactFloor } from './usable.js';

/** How long a settled touch may wait for a verdict near a limit to become sure, seconds. */
const patienceS = 1;
/** Under this share of the whole uncertainty, more readings cannot make the verdict surer. */
const improvableShare = 0.5;
/** Probability before any reading that a line charges slowly. */
const slowSupply = 0.4;
const slowSignal = 0.01;
const slowGround = 0.001;

export const captureIfSettled = (teller: Teller): void => {
  const { state } = teller;
  if (state.stage === 'closed') return;
  if (state.contact.touch === null) {
    reviseIfMoved(teller);
    return;
  }
  const touch = readTouch(state);
  if (touch.phase !== 'settled' && touch.phase !== 'wobbling') return;
  const captured = captureOf(state, touch);
  if (state.stage === 'ground-check') checkGround(teller, captured);
  else if (touch.phase === 'wobbling' || isWorthNaming(state, touch, captured)) {
    take(teller, captured);
  }
};

/** A line that goes on creeping after its capture: what it has come to counts. */
const reviseIfMoved = (teller: Teller): void => {
  const { state } = teller;
  const { contact, latest, noise } = state;
  const { rest } = contact;
  if (rest === null || rest.of === null || latest?.capture !== rest.of) return;
  const seen = watched(rest);
  if (seen === null) return;
  const { mean, change, squares } = seen;
  const { n, from, to } = rest.watch;
  const resolution = resolutionAt(state, mean);
  const scatter = noiseAt(noise, mean, resolution) / Math.sqrt(n);
  const moved = Math.abs(mean - rest.captured);
  if (moved <= Math.max(revisedFrom * Math.abs(mean), 2 * resolution, 4 * scatter)) return;
  if (Math.abs(change) > Math.max(flatWithin * Math.abs(mean), resolution) + 3 * scatter) return;
  const range =
    state.reading !== null && 'range' in state.reading ? state.reading.range : undefined;
  const deviation = Math.hypot(scatter, change);
  take(teller, {
    type: 'touch-captured',
    t: state.t,
    touch: rest.of,
    value: mean,
    standardUncertainty: captureUncertainty(state.accuracy, {
      value: mean,
      range,
      resolution,
      deviation,
    }),
    deviation,
    residualSquares: squares,
    readings: n,
    ...(range === undefined ? {} : { range }),
    resolution,
    from,
    to,
  });
};

/** A captured level that moved by this much (fraction) is revised, once it moves no more than that. */
const revisedFrom = 0.007;
const flatWithin = 0.003;

/** The present touch, as the settle test sees it. */
export const readTouch = (state: WalkState): Settle => {
  const { contact, noise } = state;
  const value = contact.touch?.creep.last ?? 0;
  return settle(contact, {
    noise,
    resolution: resolutionAt(state, value),
    floor: contactFloor(state.plan.function),
    coarse:
      coarseStep(state, value) === null
        ? null
        : toldResolution(state) === undefined
          ? 'seen'
          : 'told',
    slow: slownessAt(pinInReach(state)),
  });
};

/** The technician answered that the line is open. */
export const captureAnsweredOpen = (teller: Teller, t: number): void => {
  const { state } = teller;
  take(teller, {
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
  if (question !== null && captured.value !== undefined) {
    teller.tell({
      type: 'question-answered',
      t: captured.t,
      question: question.question,
      pin: question.pin,
      by: 'contact',
    });
  }
  teller.tell(captured);
  tellCaptures(teller, captured.t);
  tellPlace(teller, captured.t, false);
};

const slownessAt = (pin: PlannedPin | undefined): number => {
  if (pin?.charges === true) return slowSupply;
  return pin?.kind === 'ground' ? slowGround : slowSignal;
};

const pinInReach = (state: WalkState): PlannedPin | undefined =>
  state.plan.pins[waitsFor(likeliestWay(state))];

const resolutionAt = (state: WalkState, value: number): number => {
  const { reading } = state;
  const range = reading !== null && 'range' in reading ? reading.range : undefined;
  return (
    toldResolution(state) ?? inferResolution(state.accuracy, state.plan.function, value, range)
  );
};

/** The display's step where it is coarser than it could be and not known to stay so, or null. */
const coarseStep = (state: WalkState, value: number): number | null => {
  const { accuracy, contact, plan, trustedStep } = state;
  const step = toldResolution(state) ?? seenStep(state, contact.touch?.step ?? 0);
  const finest = inferResolution(accuracy, plan.function, value, undefined);
  const matters = step > 5 * finest && step > settleTolerance(value, finest);
  return matters && step > trustedStep ? step : null;
};

/** The step seen in the digits. Zero has none: it may be all that a coarse range shows of a line, but not of ground. */
const seenStep = (state: WalkState, step: number): number => {
  if (siUnit(state.plan.function) === 'V') return 0;
  if (Number.isFinite(step)) return step;
  return pinInReach(state)?.kind === 'ground' ? 0 : contactFloor(state.plan.function) * 3;
};

const toldResolution = ({ reading }: WalkState): number | undefined =>
  reading !== null && 'resolution' in reading ? reading.resolution : undefined;

const captureOf = (
  state: WalkState,
  touch: Extract<Settle, { level: number }>,
): EventOf<'touch-captured'> => {
  const { contact, accuracy, t } = state;
  const { creep, display } = contact.touch as NonNullable<typeof contact.touch>;
  const { range } = display;
  const step = coarseStep(state, creep.last);
  const wobble = touch.phase === 'wobbling';
  const resolution = resolutionAt(state, touch.level);
  return {
    type: 'touch-captured',
    t,
    touch: state.nextTouch,
    value: touch.level,
    ...(wobble ? { wobble: true as const } : {}),
    standardUncertainty: captureUncertainty(accuracy, {
      value: touch.level,
      range,
      resolution,
      deviation: wobble ? touch.scatter : touch.levelDeviation,
    }),
    deviation: wobble ? touch.scatter : touch.levelDeviation,
    residualSquares: touch.residualSquares,
    readings: touch.used,
    ...(range === undefined ? {} : { range }),
    resolution,
    ...(step === null ? {} : { coarseStep: step }),
    from: creep.startT,
    to: creep.lastT,
  };
};

const isWorthNaming = (
  state: WalkState,
  touch: Extract<Settle, { level: number }>,
  captured: EventOf<'touch-captured'>,
): boolean => {
  const { value, standardUncertainty } = captured;
  if (value === undefined || standardUncertainty === null) return true;
  if (mayBeTap(state, value)) return false;
  const pin = pinInReach(state);
  if (pin === undefined) return true;
  const { confidence } = judge(pin, { value, standardUncertainty });
  return (
    confidence >= leastConfidence ||
    touch.levelDeviation < improvableShare * standardUncertainty ||
    captured.to - captured.from >= patienceS
  );
};

/** The ground check: two touches of ground with a lift between them. */
const checkGround = (teller: Teller, { t, value = 0 }: EventOf<'touch-captured'>): void => {
  const { contact, grounds } = teller.state;
  if (!isGround(teller.state, value)) {
    teller.tell({ type: 'ground-missed', t, value });
    return;
  }
  const { slip, lift } = gapLikelihood(viewOf(teller.state));
  if (grounds === 1 && lift <= 3 * slip && contact.gap.level !== null) return;
  teller.tell({ type: 'ground-touched', t, value, which: grounds === 0 ? 1 : 2 });
  if (teller.state.grounds === 2) {
    teller.tell({ type: 'ground-checked', t, outcome: 'good' });
    tellPlace(teller, t, true);
  }
};

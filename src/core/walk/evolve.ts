// Folds one event into the walk's state. The only way state ever changes, live, in a rerun and in a replay.
import {
  isJobEvent,
  isPressEvent,
  isReadyEvent,
  isReworkEvent,
  isSuspectEvent,
} from '../event-families.js';
import type { EventOf, WalkEvent } from '../events.js';
import { applyAct } from './act.js';
import { afterBlindness, consumeTouch, restOn } from './contact.js';
import { deafened, withReply } from './pad-ear.js';
import { saysDone } from './said.js';
import type { WalkState } from './state.js';
import { takeCapture } from './take-capture.js';
import { takeJudged, takeSettled } from './take-judged.js';
import { takeFreeAct, takePress } from './take-press.js';
import { takeReading } from './take-reading.js';
import { takeReady } from './take-ready.js';
import { takeSuspects } from './take-suspects.js';
import { weighWays } from './ways.js';
import { indexOfPin } from './whereabouts.js';
import { laidOutLike } from './with-reading.js';

export const evolve = (state: WalkState, event: WalkEvent): WalkState =>
  event.type === 'reading-taken'
    ? takeReading(state, event)
    : laidOutLike(state, takeOther(state, event));

const takeOther = (
  state: WalkState,
  event: Exclude<WalkEvent, EventOf<'reading-taken'>>,
): WalkState => {
  const timed = event.t === state.t ? state : { ...state, t: event.t };
  if (isPressEvent(event)) return takePress(timed, event);
  if (isSuspectEvent(event)) return takeSuspects(timed, event);
  if (isReadyEvent(event)) return takeReady(timed, event);
  // The walk decides nothing by the job around it.
  if (isJobEvent(event) || isReworkEvent(event)) return timed;
  switch (event.type) {
    case 'touch-captured':
      return takeCapture(timed, event);
    case 'reply-given':
    case 'reply-cancelled':
    case 'reply-shadowed':
      return { ...timed, pads: withReply(timed.pads, event) };
    case 'act-taken':
      return takeFreeAct(applyAct(timed, event), event);
    case 'link-changed':
      return takeLink(timed, event);
    case 'ground-touched':
      return { ...timed, grounds: event.which, contact: restOn(timed.contact, null, event.value) };
    case 'ground-repeated':
      return {
        ...timed,
        groundRepeated: true,
        contact: restOn(timed.contact, null, event.value),
      };
    case 'ground-missed':
      return { ...timed, contact: restOn(timed.contact, null, event.value) };
    case 'ground-checked':
      return {
        ...timed,
        stage: 'walking',
        groundCheck: false,
        contact: consumeTouch(timed.contact),
      };
    case 'ground-doubted':
      return { ...timed, opensInARow: 0 };
    case 'pin-reached':
      return {
        ...timed,
        stage: 'walking',
        groundCheck: false,
        contact: wasIdle(timed) ? afterBlindness(timed.contact) : timed.contact,
        cursor: indexOfPin(timed, event.pin),
        reachedT: event.t,
        hushed: false,
      };
    case 'question-asked':
      return {
        ...timed,
        question: {
          question: event.question,
          pin: event.pin,
          t: event.t,
          touch: timed.nextTouch,
        },
        calls: afterAsking(timed, event),
      };
    case 'question-answered':
      return {
        ...timed,
        question: null,
        hushed: event.by === 'act',
        calls: event.question === 'open' ? timed.calls : { ...timed.calls, doubts: 0 },
      };
    case 'walk-held':
      return {
        ...timed,
        hold: { reason: event.reason, detail: event.detail },
        contact: event.reason === 'frozen-display' ? timed.contact : afterBlindness(timed.contact),
        pads: deafened(timed.pads),
      };
    case 'walk-freed':
      return { ...timed, hold: null };
    case 'walk-paused':
      return {
        ...timed,
        paused: event.reason,
        contact: afterBlindness(timed.contact),
        pads: deafened(timed.pads),
      };
    case 'walk-continued':
      return { ...timed, paused: null, reachedT: event.t };
    case 'pin-settled':
      return takeSettled(timed, event);
    case 'pin-judged':
      return takeJudged(timed, event);
    case 'shift-estimated':
      return { ...timed, shiftsTold: { ...timed.shiftsTold, [event.lines]: event.shift } };
    case 'walk-finished':
      return { ...timed, stage: 'finished', cursor: timed.plan.pins.length };
    case 'session-closed':
      return { ...timed, stage: 'closed' };
    case 'session-resumed':
      return {
        ...timed,
        stage: timed.stage === 'closed' || timed.alone !== null ? stageLeft(timed) : timed.stage,
        paused: null,
        hold: null,
        question: null,
        press: null,
        probing: null,
        contact: afterBlindness(timed.contact),
        pads: deafened(timed.pads),
      };
    case 'recheck-compared':
      return { ...timed, recheckOutcome: event.outcome };
    case 'session-opened':
    case 'meter-spoke':
    case 'file-changed':
    case 'act-refused':
    case 'reply-asked':
    case 'walk-realigned':
    case 'control-compared':
      return timed;
  }
};

const afterAsking = (
  { calls }: WalkState,
  { question, pin }: EventOf<'question-asked'>,
): WalkState['calls'] => {
  if (question === 'same-or-next') return { ...calls, doubts: calls.doubts + 1 };
  if (question !== 'go-back') return calls;
  return { ...calls, pin, times: calls.pin === pin ? calls.times + 1 : 1, doubts: 0 };
};

const takeLink = (state: WalkState, { change }: EventOf<'link-changed'>): WalkState => ({
  ...state,
  link: change,
  alignment:
    change === 'ended' && state.stage === 'walking'
      ? weighWays(state.alignment, saysDone(state))
      : state.alignment,
});

const wasIdle = ({ stage, contact }: WalkState): boolean =>
  stage === 'finished' && contact.rest === null;

/** Where a closed walk stood. */
const stageLeft = ({ groundCheck, cursor, plan }: WalkState): WalkState['stage'] => {
  if (groundCheck) return 'ground-check';
  return cursor >= plan.pins.length ? 'finished' : 'walking';
};

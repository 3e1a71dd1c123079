// Folds one event into the walk's state. The only way state ever changes, live, in a rerun and in a replay.
import type { EventOf, WalkEvent } from '../events.js';
import { turnTold } from '../press/free-stage.js';
import { beginPress, keepResult, moveTo, takeInPress } from '../press/press-stage.js';
import { isValue } from '../reading.js';
import { observe } from '../suspects/observe.js';
import { applyAct } from './act.js';
import { tick } from './clock.js';
import { consumeTouch, disown, noContact, restOn } from './contact.js';
import { inputOf } from './input-of.js';
import { deafened, withReply } from './pad-ear.js';
import { askedReady, refusedNow } from './ready-step.js';
import { saysDone } from './said.js';
import { indexOfPin, type WalkState } from './state.js';
import { takeCapture } from './take-capture.js';
import { takeJudged, takeSettled } from './take-judged.js';
import { takeReading } from './take-reading.js';
import { unusable } from './usable.js';
import { elsewhere, weighWays } from './ways.js';

export const evolve = (state: WalkState, event: WalkEvent): WalkState => {
  if (event.type === 'reading-taken') return takeReading(state, event);
  const timed = event.t === state.t ? state : { ...state, t: event.t };
  switch (event.type) {
    case 'touch-captured':
      return takeCapture(timed, event);
    case 'reply-given':
    case 'reply-cancelled':
    case 'reply-shadowed':
      return { ...timed, pads: withReply(timed.pads, event) };
    case 'act-taken':
      return withFreeAct(applyAct(timed, event), event);
    case 'link-changed':
      return takeLink(timed, event);
    case 'ready-asked':
      return {
        ...timed,
        ready: askedReady(event.step),
        readyNext: timed.readyNext.filter((step) => step !== event.step),
      };
    case 'lead-zeroed': {
      const { ohms, standardUncertainty, degreesOfFreedom, readings } = event;
      return {
        ...timed,
        ready: null,
        leads: { ohms, standardUncertainty, degreesOfFreedom, readings },
        contact: restOn(timed.contact, null, 0),
      };
    }
    case 'lead-zero-refused':
      return { ...timed, ready: refusedNow(timed.ready) };
    case 'reference-checked':
      return event.outcome.ok
        ? { ...timed, ready: null, contact: restOn(timed.contact, null, event.value) }
        : { ...timed, ready: refusedNow(timed.ready) };
    case 'ready-left':
      return { ...timed, ready: null, contact: afterBlindness(timed) };
    case 'ground-touched':
      return { ...timed, grounds: event.which, contact: restOn(timed.contact, null, event.value) };
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
        contact: wasIdle(timed) ? afterBlindness(timed) : timed.contact,
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
      };
    case 'question-answered':
      return { ...timed, question: null, hushed: event.by === 'act' };
    case 'walk-held':
      return {
        ...timed,
        hold: { reason: event.reason, detail: event.detail },
        contact: event.reason === 'frozen-display' ? timed.contact : afterBlindness(timed),
        pads: deafened(timed.pads),
      };
    case 'walk-freed':
      return { ...timed, hold: null };
    case 'walk-paused':
      return {
        ...timed,
        paused: event.reason,
        contact: afterBlindness(timed),
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
        contact: afterBlindness(timed),
        pads: deafened(timed.pads),
      };
    case 'press-begun':
      return {
        ...timed,
        stage: timed.alone === null ? timed.stage : 'walking',
        press: beginPress(event, timed.plan),
        contact: afterBlindness(timed),
        pressDue: timed.pressDue.filter((pin) => pin !== event.pin),
        question: null,
        pads: deafened(timed.pads),
      };
    case 'press-moved':
      return {
        ...timed,
        press: timed.press === null ? null : moveTo(timed.press, timed.plan, event),
        pressTests: timed.pressTests + 1,
      };
    case 'cue-given':
      return {
        ...timed,
        press:
          timed.press === null
            ? null
            : takeInPress(timed.press, { kind: 'cue', t: event.t, cue: event.cue }),
      };
    case 'press-judged':
      return {
        ...timed,
        presses: [...timed.presses, event],
        recheckOutcome: null,
        evidence: observe(timed.evidence, event),
        press: timed.press === null ? null : keepResult(timed.press),
      };
    case 'reading-returned':
      return withTurn(timed, true);
    case 'reading-lost':
      return withTurn(timed, false);
    case 'press-traced':
      return {
        ...timed,
        press: timed.press === null ? null : { ...timed.press, traced: event },
      };
    case 'press-compared':
      return {
        ...timed,
        press: timed.press === null ? null : { ...timed.press, compared: event },
      };
    case 'recheck-compared':
      return { ...timed, recheckOutcome: event.outcome };
    case 'press-ended':
      return {
        ...timed,
        stage: timed.alone === null ? timed.stage : 'finished',
        press: null,
        lastPress: timed.press === null ? null : { stage: timed.press, endedT: event.t },
        contact: afterPress(timed),
        reachedT: event.t,
      };
    case 'probe-begun':
      return {
        ...timed,
        probing: event,
        question: null,
        hushed: false,
        contact: disown(timed.contact),
        reachedT: event.t,
      };
    case 'place-judged':
      return { ...timed, evidence: observe(timed.evidence, event, timed.probing) };
    case 'probe-ended':
      return {
        ...timed,
        probing: null,
        question: null,
        hushed: false,
        latest: null,
        alignment: elsewhere(timed.alignment),
        contact: disown(timed.contact),
        reachedT: event.t,
      };
    case 'suspects-ranked':
      return {
        ...timed,
        ranked: event,
        accused: event.quiet === true ? timed.accused : (event.suspects[0] ?? null),
      };
    case 'session-opened':
    case 'meter-spoke':
    case 'file-changed':
    case 'act-refused':
    case 'reply-asked':
    case 'walk-realigned':
    case 'control-compared':
    case 'heat-cautions-confirmed':
    case 'heat-started':
    case 'heat-limit-met':
    case 'heat-stopped':
    case 'rework-logged':
    case 'power-checked':
    case 'function-tested':
    case 'job-closed':
    case 'intake-noted':
    case 'photo-attached':
    case 'caution-confirmed':
    case 'residual-measured':
    case 'residual-skipped':
    case 'symptom-observed':
    case 'groups-proposed':
      return timed;
  }
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

/** What the probe does while nobody watches is unknown: slip and lift are then equally likely. */
const afterBlindness = ({ contact }: WalkState): WalkState['contact'] => ({
  ...noContact,
  clock: contact.clock,
});

/** What the technician marks in a free press test. */
const withFreeAct = (state: WalkState, taken: EventOf<'act-taken'>): WalkState => {
  const { press } = state;
  const input = press === null || press.free === null ? null : inputOf(taken);
  return press === null || input === null ? state : { ...state, press: takeInPress(press, input) };
};

const withTurn = (state: WalkState, reads: boolean): WalkState => {
  const { press } = state;
  if (press === null || press.free === null) return state;
  return { ...state, press: { ...press, free: turnTold(press.free, reads) } };
};

/** The probe still is where it was pressed: what reads there belongs to the past. */
const afterPress = (state: WalkState): WalkState['contact'] => {
  const { reading } = state;
  const blind = afterBlindness(state);
  if (reading === null || !isValue(reading) || unusable(state.plan, reading) !== null) return blind;
  return restOn({ ...blind, clock: tick(blind.clock, reading.t) }, null, reading.value);
};

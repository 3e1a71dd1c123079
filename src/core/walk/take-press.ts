// Folds a press test into the walk: what it is about, what it has heard so far and what it found.
import type { PressEvent } from '../event-families.js';
import type { EventOf } from '../events.js';
import { turnTold } from '../press/free-stage.js';
import {
  beginPress,
  keepResult,
  moveTo,
  type PressStage,
  takeInPress,
} from '../press/press-stage.js';
import { isValue } from '../reading.js';
import { observe } from '../suspects/observe.js';
import { tick } from './clock.js';
import { afterBlindness, restOn } from './contact.js';
import { inputOf } from './input-of.js';
import { deafened } from './pad-ear.js';
import type { WalkState } from './state.js';
import { unusable } from './usable.js';

export const takePress = (state: WalkState, event: PressEvent): WalkState => {
  switch (event.type) {
    case 'press-begun':
      return {
        ...state,
        stage: state.alone === null ? state.stage : 'walking',
        press: beginPress(event, state.plan),
        contact: afterBlindness(state.contact),
        pressDue: state.pressDue.filter((pin) => pin !== event.pin),
        question: null,
        pads: deafened(state.pads),
      };
    case 'press-moved':
      return {
        ...withPress(state, (press) => moveTo(press, state.plan, event)),
        pressTests: state.pressTests + 1,
      };
    case 'cue-given':
      return withPress(state, (press) =>
        takeInPress(press, { kind: 'cue', t: event.t, cue: event.cue }),
      );
    case 'press-judged':
      return {
        ...withPress(state, keepResult),
        presses: [...state.presses, event],
        recheckOutcome: null,
        evidence: observe(state.evidence, event),
      };
    case 'reading-returned':
      return withTurn(state, true);
    case 'reading-lost':
      return withTurn(state, false);
    case 'press-traced':
      return withPress(state, (press) => ({ ...press, traced: event }));
    case 'press-compared':
      return withPress(state, (press) => ({ ...press, compared: event }));
    case 'press-ended':
      return {
        ...state,
        stage: state.alone === null ? state.stage : 'finished',
        press: null,
        lastPress: state.press === null ? null : { stage: state.press, endedT: event.t },
        contact: afterPress(state),
        reachedT: event.t,
      };
  }
};

/** What the technician marks in a free press test. */
export const takeFreeAct = (state: WalkState, taken: EventOf<'act-taken'>): WalkState =>
  withPress(state, (press) => {
    const input = press.free === null ? null : inputOf(taken);
    return input === null ? press : takeInPress(press, input);
  });

const withTurn = (state: WalkState, reads: boolean): WalkState =>
  withPress(state, (press) =>
    press.free === null ? press : { ...press, free: turnTold(press.free, reads) },
  );

const withPress = (state: WalkState, change: (press: PressStage) => PressStage): WalkState =>
  state.press === null ? state : { ...state, press: change(state.press) };

/** The probe still is where it was pressed: what reads there belongs to the past. */
const afterPress = ({ contact, plan, reading }: WalkState): WalkState['contact'] => {
  const blind = afterBlindness(contact);
  if (reading === null || !isValue(reading) || unusable(plan, reading) !== null) return blind;
  return restOn({ ...blind, clock: tick(blind.clock, reading.t) }, null, reading.value);
};

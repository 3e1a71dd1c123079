// Which pin the screen is about. Not always the one the walk waits for: while the probe still rests on a pin
// that was just judged, its reading belongs to that pin, and showing it beside the next one would mislead.
import { shiftedExpectation, shiftFor } from '../context/shifted-expectation.js';
import { walksDonor } from '../profile/donor.js';
import type { PlannedPin } from '../profile/plan.js';
import type { ExpectedBounds } from '../verdict.js';
import { calledBack } from '../walk/call-back.js';
import type { PinRecord, WalkState } from '../walk/state.js';
import { indexOfPin, likeliestWay, probedPin } from '../walk/whereabouts.js';

interface Pinned {
  readonly planned: PlannedPin;
  readonly record: PinRecord;
}

export interface Subject extends Pinned {
  /** The probe still rests on this pin, and its verdict stands. */
  readonly judged: boolean;
  /** A verdict that is not normal waits for the repeat touch or "next". */
  readonly confirming: boolean;
}

/** The pin the live reading is compared with, or null before the walk and after its end. */
export const selectSubject = (state: WalkState): Subject | null => {
  if (state.stage === 'ground-check') return null;
  if (state.probing !== null) return probedSubject(state, state.probing);
  const rested = restedIndex(state);
  const pressed = state.press === null ? null : indexOfPin(state, state.press.pin);
  const called = calledBack(state)?.index ?? null;
  const index = pressed ?? called ?? rested ?? state.cursor;
  const planned = state.plan.pins[index];
  const record = state.pins[index];
  if (planned === undefined || record === undefined) return null;
  const confirming = isConfirming(state) && likeliestWay(state).index === index;
  return { planned, record, judged: rested !== null && index === rested, confirming };
};

/** A place along a line is compared with what its pin should read. */
const probedSubject = (
  state: WalkState,
  probing: NonNullable<WalkState['probing']>,
): Subject | null => {
  const planned = probedPin(state, probing);
  const record = state.pins[planned?.index ?? -1];
  return planned === undefined || record === undefined
    ? null
    : { planned, record, judged: false, confirming: false };
};

/** What is expected at a pin as this meter shows it: as it was judged, or as it would be. */
export const expectedAt = ({ shifts }: WalkState, { planned, record }: Pinned): ExpectedBounds =>
  record.verdict === 'unread'
    ? shiftedExpectation(planned.expected, shiftFor(planned, shifts)).expected
    : record.expected;

/** The pin the walk goes to next: the waiting one while the probe still rests on the one before. */
export const selectNext = (state: WalkState): PlannedPin | null => {
  if (state.probing !== null) return state.plan.pins[state.cursor] ?? null;
  const rested = restedIndex(state);
  const called = calledBack(state)?.index ?? null;
  if (called !== null) return state.plan.pins[called + 1] ?? null;
  const at = rested === null || rested === state.cursor ? state.cursor + 1 : state.cursor;
  return state.stage === 'ground-check'
    ? (state.plan.pins[0] ?? null)
    : (state.plan.pins[at] ?? null);
};

const isConfirming = (state: WalkState): boolean =>
  state.stage === 'walking' && likeliestWay(state).stage === 'confirming';

const restedIndex = (state: WalkState): number | null => {
  if (state.contact.rest === null || state.pending.length > 0) return null;
  const { index, stage } = likeliestWay(state);
  const record = state.pins[index];
  return stage !== 'awaiting' && record !== undefined && record.verdict !== 'unread' ? index : null;
};

/** The board that the screen's pin is on; null where there is only the patient. */
export const selectBoard = (state: WalkState): 'donor' | 'patient' | null => {
  if (!walksDonor(state.plan)) return null;
  if (state.stage === 'ground-check') return state.grounds === 0 ? 'donor' : 'patient';
  const subject = selectSubject(state);
  return subject === null ? null : (subject.planned.board ?? 'patient');
};

// What a frame means while a reading is asked for: the reading, what will never come, or a frame too many.
import type { Frame } from '../../framing.js';
import { isFault, isValue, type Reading } from '../../reading.js';
import { faultOf } from '../fault.js';
import { isTooSoon, overdueAfter, withAnswer } from './answer-pace.js';
import {
  type AskedSetting,
  type AskedState,
  type Asking,
  canRecover,
  type Heard,
  quietS,
  stray,
  type Turn,
} from './asked-state.js';
import { isLateMarker } from './marker-answer.js';
import { heardReading, readFrame } from './read-frame.js';

/** Null unless the marker question that was asked after the reading is answered first: then that is what was heard. */
export const readingLost = (
  { script }: AskedSetting,
  state: AskedState,
  phase: Asking,
  { t, frame }: Heard,
): { readonly state: AskedState; readonly phase: Asking } | null => {
  const { marker } = script;
  if (!phase.overdue || marker === undefined || !isLateMarker(state, frame.text)) return null;
  const isLost = t - phase.since >= overdueAfter(state.pace);
  return {
    state: {
      ...state,
      outstanding: state.outstanding + 1,
      lostReads: state.lostReads + (isLost ? 1 : 0),
    },
    phase: { ...phase, job: 'recover', step: marker, rest: [], overdue: false },
  };
};

export const hearReading = (
  setting: AskedSetting,
  state: AskedState,
  phase: Asking,
  { t, frame, together }: Heard,
): Turn => {
  const { setUp } = setting.script;
  const tookS = t - phase.since;
  // In one piece with what led to the question, or too soon after it: it was on its way already.
  if ((together && tookS === 0) || isTooSoon(state.pace, tookS))
    return unexpected(setting, state, phase, t);
  const answered = { ...state, unanswered: 0 };
  if (state.setUpDue && setUp.length > 0)
    return { state: answered, effects: [], onward: { go: 'job', job: 'set-up' } };
  const reading = readShown(setting, state, t, frame);
  if (isFault(reading) && isLateMarker(state, frame.text)) return stray(state, 1);
  const { faults, effects } = heardReading(reading, state.faults);
  // What cannot be read may be no answer at all: then the answer is still to come.
  const isUnread = isFault(reading) && state.shown !== 'unlisted';
  const next: AskedState = {
    ...answered,
    ...functionDoubt(state, reading),
    outstanding: isUnread ? 1 : state.outstanding,
    pace: isFault(reading) ? state.pace : withAnswer(state.pace, tookS),
    lostReads: 0,
    missedReads: 0,
    strays: 0,
    silent: false,
    faults,
    told: isFault(reading) ? state.told : [],
  };
  return { state: next, effects, onward: { go: 'rest', job: phase.job, steps: phase.rest } };
};

/** A reading of what the meter says it measures, which may have been switched at the panel. */
const readShown = (
  { decoder, asked }: AskedSetting,
  { shown }: AskedState,
  t: number,
  frame: Frame,
): Reading => {
  if (shown === 'unlisted') return faultOf(t, 'the meter measures something else', frame.text);
  const isOther = shown !== null && shown !== asked.function;
  return readFrame(t, frame, decoder, isOther ? { function: shown } : asked);
};

/** Two readings that differ by more than this factor may be of two functions. */
const jump = 3;

/** A reading that jumped, as the first one after a lift does, has the function asked for before the next. */
const functionDoubt = (
  { last, functionDueAt, functionMissed }: AskedState,
  reading: Reading,
): Pick<AskedState, 'last' | 'functionDueAt'> => {
  if (isFault(reading)) return { last, functionDueAt };
  const isDue = functionMissed === 0 && hasJumped(last, reading);
  return { last: reading, functionDueAt: isDue ? reading.t : functionDueAt };
};

const hasJumped = (before: Reading | null, now: Reading): boolean => {
  if (before === null || !isValue(before) || !isValue(now))
    return before !== null && isValue(before) !== isValue(now);
  const [a, b] = [Math.abs(before.value), Math.abs(now.value)];
  return Math.max(a, b) > jump * Math.min(a, b);
};

/** A frame too many: where it can be, it is made certain before the next reading that no answer is left. */
const unexpected = (setting: AskedSetting, state: AskedState, phase: Asking, t: number): Turn => {
  const outstanding = state.outstanding + (canRecover(setting, state) ? 1 : 0);
  const pace = { ...state.pace, tooSoon: state.pace.tooSoon + 1 };
  // Whether the answer is still to come is soon asked.
  const until = state.marker === 'answered' ? Math.min(phase.until, t + quietS) : phase.until;
  return stray({ ...state, outstanding, pace, phase: { ...phase, until } }, 1);
};

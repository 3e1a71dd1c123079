// What a frame means while a question is open. Each kind of question knows its answers by their form; a frame
// of another form is an echo or belongs to an earlier question, and is thrown away.
import { cleanText } from '../clean-text.js';
import type { Frame } from '../framing.js';
import { isFault, isValue, type Reading } from '../reading.js';
import {
  type AskedSetting,
  type AskedState,
  canRecover,
  latestAnswer,
  type Phase,
  quietS,
  type Turn,
} from './dialogue-asked-state.js';
import { heardReading, readFrame } from './dialogue-hearing.js';
import { isTooSoon, overdueAfter, withAnswer } from './dialogue-pace.js';
import type { DialogueEffect, DialogueEvent } from './dialogue-types.js';
import { errorWords } from './dialogue-words.js';
import { type ErrorEntry, errorClass, parseErrorEntry } from './error-entry.js';
import { faultOf } from './fault.js';
import { parseIdentity } from './identity.js';

type Asking = Extract<Phase, { at: 'asking' }>;

const longestIdentity = 120;
/** A queue that never runs dry is not read for ever. */
const mostEntries = 20;

/** A lone number may be a late reading; an entry is taken for one only where its comma shows. */
const entryOf = (state: AskedState, text: string): ErrorEntry | null =>
  state.outstanding > 0 && !text.includes(',') ? null : parseErrorEntry(text);

const isIdentity = (text: string): boolean =>
  parseErrorEntry(text) === null && /\p{L}{2}/u.test(text) && parseIdentity(text) !== null;

export const hearAnswer = (
  setting: AskedSetting,
  state: AskedState,
  phase: Asking,
  heard: Extract<DialogueEvent, { event: 'frame' }>,
): Turn => {
  const { t, frame } = heard;
  const { step, job, rest } = phase;
  if (frame.text.trim() === step.text.trim()) return stray(state, 0);
  const answered = { ...state, unanswered: 0 };
  const onward = (next: AskedState, effects: readonly DialogueEffect[] = []): Turn => ({
    state: next,
    effects,
    onward: { go: 'rest', job, steps: rest },
  });
  switch (step.expects) {
    case 'nothing':
    case 'anything':
      return onward(answered);
    case 'identity': {
      if (!isIdentity(frame.text)) return stray(state, 1);
      const text = cleanText(frame.text.trim(), longestIdentity);
      const known = text === state.identity;
      const said: DialogueEffect[] = known ? [] : [{ effect: 'says', t, says: 'identity', text }];
      const told = { ...answered, identity: text };
      return onward(step === setting.script.marker ? markerAnswered(told, setting, t) : told, said);
    }
    case 'errors': {
      const entry = entryOf(state, frame.text);
      if (entry === null) return stray(state, 1);
      return errorTurn(markerAnswered(answered, setting, t), phase, t, entry);
    }
    case 'function': {
      const query = setting.script.functionQuery;
      const shown = query?.shown(frame.text);
      if (query === undefined || shown === undefined) return stray(state, 1);
      const functionDueAt = t + query.everyS;
      return onward({ ...answered, shown, functionDueAt, functionMissed: 0 });
    }
    case 'reading':
      return hearReading(setting, state, phase, heard);
  }
};

const hearReading = (
  setting: AskedSetting,
  state: AskedState,
  phase: Asking,
  heard: Extract<DialogueEvent, { event: 'frame' }>,
): Turn => {
  const { t, frame, together } = heard;
  const { marker, setUp } = setting.script;
  const tookS = t - phase.since;
  if (phase.overdue && marker !== undefined && isLateMarker(state, frame.text)) {
    const lostReads = state.lostReads + (tookS < overdueAfter(state.pace) ? 0 : 1);
    const lost = { outstanding: state.outstanding + 1, lostReads };
    const asking: Asking = { ...phase, job: 'recover', step: marker, rest: [], overdue: false };
    return hearAnswer(setting, { ...state, ...lost }, asking, heard);
  }
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

const stray = (state: AskedState, count: number): Turn => ({
  state: { ...state, strays: state.strays + count },
  effects: [],
  onward: { go: 'wait' },
});

/** A frame too many: where it can be, it is made certain before the next reading that no answer is left. */
const unexpected = (setting: AskedSetting, state: AskedState, phase: Asking, t: number): Turn => {
  const outstanding = state.outstanding + (canRecover(setting, state) ? 1 : 0);
  const pace = { ...state.pace, tooSoon: state.pace.tooSoon + 1 };
  // Whether the answer is still to come is soon asked.
  const until = state.marker === 'answered' ? Math.min(phase.until, t + quietS) : phase.until;
  return stray({ ...state, outstanding, pace, phase: { ...phase, until } }, 1);
};

/**
 * The marker was answered, and answers come in order: nothing is still on its way that was asked before it. Which of
 * several markers this answers cannot be seen, so it is taken for the oldest.
 */
const markerAnswered = (state: AskedState, { script }: AskedSetting, t: number): AskedState => {
  const from = t - latestAnswer * script.timeoutS;
  const [asked = t, ...owed] = state.owed.filter((at) => at >= from);
  const outstanding = asked >= state.askedAt ? 0 : state.outstanding;
  return { ...state, owed, outstanding, marker: 'answered' };
};

const isLateMarker = (state: AskedState, text: string): boolean =>
  text.trim() === state.identity || (text.includes(',') && parseErrorEntry(text) !== null);

const errorTurn = (
  state: AskedState,
  { job, step, rest }: Asking,
  t: number,
  entry: ErrorEntry,
): Turn => {
  const entries = state.entries + 1;
  const isDry = entry.code === 0 && state.outstanding === 0;
  const last = isDry || entries >= mostEntries;
  // Asking again after a time-out makes a query error by itself.
  const ours = job === 'recover' && errorClass(entry) === 'query';
  const text = errorWords(entry);
  const tell = entry.code !== 0 && !ours && !state.told.includes(text);
  return {
    state: { ...state, entries, told: tell ? [...state.told, text] : state.told },
    effects: tell ? [{ effect: 'says', t, says: 'error', text }] : [],
    onward: { go: 'rest', job, steps: last ? rest : [step, ...rest] },
  };
};

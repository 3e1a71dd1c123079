// What a frame means while a question is open. Each kind of question knows its answers by their form; a frame
// of another form is an echo or belongs to an earlier question, and is thrown away.
import { cleanText } from '../clean-text.js';
import type { Frame } from '../framing.js';
import { isFault, isValue, type Reading } from '../reading.js';
import type { AskedSetting, AskedState, Phase, Turn } from './dialogue-asked-state.js';
import { heardReading, readFrame } from './dialogue-hearing.js';
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
  { t, frame, together }: Extract<DialogueEvent, { event: 'frame' }>,
): Turn => {
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
      return onward({ ...certain(answered, setting, 'identity'), identity: text }, said);
    }
    case 'errors': {
      const entry = entryOf(state, frame.text);
      if (entry === null) return stray(state, 1);
      return errorTurn(certain(answered, setting, 'errors'), phase, t, entry);
    }
    case 'function': {
      const query = setting.script.functionQuery;
      const shown = query?.shown(frame.text);
      if (query === undefined || shown === undefined) return stray(state, 1);
      const functionDueAt = t + query.everyS;
      return onward({ ...answered, shown, functionDueAt, functionMissed: 0 });
    }
    case 'reading': {
      // In one piece with what led to the question: it was on its way already, and more may be.
      if (together && t === phase.since) return unexpected(state);
      const reading = readShown(setting, state, t, frame);
      if (isFault(reading) && isLateMarker(state, frame.text)) return stray(state, 1);
      const { faults, effects } = heardReading(reading, state.faults);
      const good = isFault(reading) ? state.told : [];
      // What cannot be read may be no answer at all: then the answer is still to come.
      const isUnread = isFault(reading) && state.shown !== 'unlisted';
      const outstanding = isUnread ? 1 : state.outstanding;
      const read = { outstanding, missedReads: 0, strays: 0, silent: false, faults, told: good };
      return onward({ ...answered, ...read, ...functionDoubt(state, reading) }, effects);
    }
  }
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

/** A frame too many: before the next reading it is made certain that no answer is left. */
const unexpected = (state: AskedState): Turn => ({
  ...stray(state, 1),
  state: { ...state, strays: state.strays + 1, outstanding: state.outstanding + 1 },
});

/** The marker was answered: answers come in order, so nothing earlier is still on its way. */
const certain = (
  state: AskedState,
  { script }: AskedSetting,
  expects: 'identity' | 'errors',
): AskedState => ({
  ...state,
  outstanding: 0,
  marker: script.marker?.expects === expects ? 'answered' : state.marker,
});

const isLateMarker = (state: AskedState, text: string): boolean =>
  text.trim() === state.identity || (text.includes(',') && parseErrorEntry(text) !== null);

const errorTurn = (
  state: AskedState,
  { job, step, rest }: Asking,
  t: number,
  entry: ErrorEntry,
): Turn => {
  const entries = state.entries + 1;
  const last = entry.code === 0 || entries >= mostEntries;
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

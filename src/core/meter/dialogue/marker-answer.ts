// What the answer to a marker question proves: answers come in order, so nothing is still on its way that was asked
// before it. The marker is the error queue, whose entries are read till none is left, or the identity.
import { errorWords } from '../../words/english-meter.js';
import { type ErrorEntry, errorClass, parseErrorEntry } from '../error-entry.js';
import {
  type AskedSetting,
  type AskedState,
  type Asking,
  latestAnswer,
  type Turn,
} from './asked-state.js';

/** A queue that never runs dry is not read for ever. */
const mostEntries = 20;

/**
 * The marker was answered, and answers come in order: nothing is still on its way that was asked before it. Which of
 * several markers this answers cannot be seen, so it is taken for the oldest.
 */
export const markerAnswered = (
  state: AskedState,
  { script }: AskedSetting,
  t: number,
): AskedState => {
  const from = t - latestAnswer * script.timeoutS;
  const [asked = t, ...owed] = state.owed.filter((at) => at >= from);
  const outstanding = asked >= state.askedAt ? 0 : state.outstanding;
  return { ...state, owed, outstanding, marker: 'answered' };
};

/** Whether the text is the answer to a marker question, whatever was asked last. */
export const isLateMarker = (state: AskedState, text: string): boolean =>
  text.trim() === state.identity || (text.includes(',') && parseErrorEntry(text) !== null);

/** One entry of the error queue was read: said if it is one, and the next asked for while there may be more. */
export const hearEntry = (
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

// What a frame means while a question is open. Each kind of question knows its answers by their form; a frame
// of another form is an echo or belongs to an earlier question, and is thrown away.
import { cleanText } from '../../clean-text.js';
import { type ErrorEntry, parseErrorEntry } from '../error-entry.js';
import { parseIdentity } from '../identity.js';
import {
  type AskedSetting,
  type AskedState,
  type Asking,
  type Heard,
  stray,
  type Turn,
} from './asked-state.js';
import type { DialogueEffect } from './dialogue-types.js';
import { hearReading, readingLost } from './hear-reading.js';
import { hearEntry, markerAnswered } from './marker-answer.js';

const longestIdentity = 120;

export const hearAnswer = (
  setting: AskedSetting,
  state: AskedState,
  phase: Asking,
  heard: Heard,
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
      return hearEntry(markerAnswered(answered, setting, t), phase, t, entry);
    }
    case 'function': {
      const query = setting.script.functionQuery;
      const shown = query?.shown(frame.text);
      if (query === undefined || shown === undefined) return stray(state, 1);
      const functionDueAt = t + query.everyS;
      return onward({ ...answered, shown, functionDueAt, functionMissed: 0 });
    }
    case 'reading': {
      const lost = readingLost(setting, state, phase, heard);
      return lost === null
        ? hearReading(setting, state, phase, heard)
        : hearAnswer(setting, lost.state, lost.phase, heard);
    }
  }
};

/** A lone number may be a late reading; an entry is taken for one only where its comma shows. */
const entryOf = (state: AskedState, text: string): ErrorEntry | null =>
  state.outstanding > 0 && !text.includes(',') ? null : parseErrorEntry(text);

const isIdentity = (text: string): boolean =>
  parseErrorEntry(text) === null && /\p{L}{2}/u.test(text) && parseIdentity(text) !== null;

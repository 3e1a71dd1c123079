// What the answer to a function query says: instruments name the function in short or long words, quoted or not, and
// some add the range. Refuses what may be a late reading.
import type { MeasureFunction } from '../reading.js';
import type { ScpiTalk } from './driver-format.js';
import { parseErrorEntry } from './error-entry.js';
import { parseNrf, plainNumber } from './number-forms.js';

/** A function by the driver's list; `unlisted`: the instrument measures something that the driver does not know. */
export type ShownFunction = MeasureFunction | 'unlisted';

const firstWord = (text: string): string =>
  text
    .trim()
    .replace(/^["']|["']$/gu, '')
    .split(/[\s,]/u, 1)
    .join('')
    .toUpperCase();

/**
 * @returns undefined where the text is no answer to this question.
 * @example shownFunction({ ..., functionQuery: { answers: { RES: 'resistance' }, ... } }, '"RES"') // 'resistance'
 */
export const shownFunction = (talk: ScpiTalk, text: string): ShownFunction | undefined => {
  const word = firstWord(text);
  for (const [answer, measure] of Object.entries(talk.functionQuery?.answers ?? {}))
    if (answer.toUpperCase() === word) return measure;
  const isOverload = talk.overload.texts?.some((known) => known.trim() === text.trim()) ?? false;
  const isReading = isOverload || parseNrf(plainNumber(text.trim(), talk.numbers)) !== null;
  return isReading || parseErrorEntry(text) !== null || !/\p{L}{2}/u.test(word)
    ? undefined
    : 'unlisted';
};

// A phrase as Markdown. In a report written from right to left, what did not come from the catalogue is set apart
// by Unicode isolates (UAX #9), as Markdown has no sign for it.
import { type Datum, type Phrase, piecesOf } from '../../core/words/report-phrase.js';
import { codeSpan, escapeMarkdown, escapeWords } from './escape-markdown.js';

export type WritePhrase = (phrase: Phrase) => string;

const leftToRight = '\u2066';
const firstStrong = '\u2068';
const end = '\u2069';

export const phraseWriter =
  (direction: 'ltr' | 'rtl'): WritePhrase =>
  (phrase) =>
    piecesOf(phrase)
      .map((piece) => (typeof piece === 'string' ? escapeWords(piece) : datum(piece, direction)))
      .join('');

const datum = ({ as, text }: Datum, direction: 'ltr' | 'rtl'): string => {
  const written = as === 'text' ? escapeMarkdown(text) : codeSpan(text);
  if (direction === 'ltr') return written;
  return `${as === 'text' ? firstStrong : leftToRight}${written}${end}`;
};

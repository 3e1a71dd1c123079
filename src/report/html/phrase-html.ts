// A phrase as HTML. Whatever did not come from the catalogue is set apart by <bdi>, so that a pin's name or a
// figure keeps its order in a line written from right to left, and a hostile text cannot turn the line around.
import { type Datum, type Phrase, piecesOf } from '../../core/words/report-phrase.js';
import { escapeHtml } from './escape-html.js';

export const phraseHtml = (phrase: Phrase): string =>
  piecesOf(phrase)
    .map((piece) => (typeof piece === 'string' ? escapeHtml(piece) : datumHtml(piece)))
    .join('');

/** Names and figures run from left to right in every language; a free text as its first letter says. */
const datumHtml = ({ as, text }: Datum): string => {
  const direction = as === 'text' ? 'auto' : 'ltr';
  return `<bdi class="${as}" dir="${direction}">${escapeHtml(text)}</bdi>`;
};

export const nameHtml = (text: string): string => datumHtml({ as: 'name', text });

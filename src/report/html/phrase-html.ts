// A phrase as HTML. Whatever did not come from the catalogue is set apart by <bdi>, so that a pin's name or a
// figure keeps its order in a line written from right to left, and a hostile text cannot turn the line around.
import { type Datum, type Phrase, piecesOf } from '../../core/words/report-phrase.js';
import { escapeHtml } from './escape-html.js';

export const phraseHtml = (phrase: Phrase): string =>
  piecesOf(phrase)
    .map((piece) => (typeof piece === 'string' ? escapeHtml(piece) : datumHtml(piece)))
    .join('');

/** Beyond this a name may be broken, or it would push a table off the page. */
const longName = 20;

/** Names and figures run from left to right in every language; a free text as its first letter says. */
const datumHtml = ({ as, text }: Datum): string => {
  const direction = as === 'text' ? 'auto' : 'ltr';
  const kind = as === 'name' && text.length > longName ? 'name long' : as;
  return `<bdi class="${kind}" dir="${direction}">${escapeHtml(text)}</bdi>`;
};

export const nameHtml = (text: string): string => datumHtml({ as: 'name', text });

// The sign of each verdict, drawn rather than typed: a page must not depend on its reader's fonts. Each has a
// shape of its own; colour only helps. Drawn once in a page and used by reference.

import type { Marked } from '../../core/report/document.js';
import { type Verdict, verdicts } from '../../core/verdict.js';
import { escapeHtml } from './escape-html.js';

const stroke =
  'fill="none" stroke="currentColor" stroke-width="2.4" stroke-linecap="round" stroke-linejoin="round"';

const shapes: Readonly<Record<Verdict, string>> = {
  normal: `<path ${stroke} d="M3 8h10"/>`,
  low: '<path fill="currentColor" d="M2.5 5h11L8 13z"/>',
  high: '<path fill="currentColor" d="M2.5 11h11L8 3z"/>',
  short: `<path ${stroke} d="M8 2.5V12M3 12.5h10"/>`,
  open: `<circle ${stroke} cx="8" cy="8" r="4.8"/>`,
  unsure: `<path ${stroke} d="M5 5.6a3 2.9 0 1 1 4.4 2.5Q8 8.9 8 10M8 13.4v.1"/>`,
  wobble: `<path ${stroke} d="M2.5 6q2.75-3.6 5.5 0t5.5 0M2.5 11q2.75-3.6 5.5 0t5.5 0"/>`,
  unread: '<circle fill="currentColor" cx="8" cy="8" r="1.7"/>',
};

/** Goes once into a page, before the first mark. */
export const markShapes: string = `<svg class="shapes" aria-hidden="true" width="0" height="0">${verdicts
  .map((verdict) => `<symbol id="mark-${verdict}" viewBox="0 0 16 16">${shapes[verdict]}</symbol>`)
  .join('')}</svg>`;

/** The sign alone, silent for a screen reader: a word has to stand beside it. */
export const signHtml = (verdict: Verdict): string =>
  `<svg class="sign ${verdict}" aria-hidden="true"><use href="#mark-${verdict}"/></svg>`;

export const verdictHtml = ({ verdict, word }: Marked): string =>
  `<span class="verdict ${verdict}">${signHtml(verdict)} ${escapeHtml(word)}</span>`;

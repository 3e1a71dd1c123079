// The connector as rows of contacts, each with its pin, its sign and its line, and the verdict's word where it is
// not normal. Drawn from left to right in every language, as pins are counted.
import type { Connector, PinMark } from '../../core/report/document.js';
import { escapeHtml } from './escape-html.js';
import { nameHtml, phraseHtml } from './phrase-html.js';
import { signHtml, verdictHtml } from './verdict-marks.js';

export const connectorHtml = ({ title, rows, legend }: Connector): string => {
  const drawn = rows.map(
    (row) => `<p class="row">${phraseHtml(row.title)}</p>
<ol class="contacts" dir="ltr">${row.pins.map(contactHtml).join('')}</ol>`,
  );
  const signs = legend.map((marked) => `<li>${verdictHtml(marked)}</li>`).join('');
  return `<div class="connector"><h4>${phraseHtml(title)}</h4>
${drawn.join('\n')}
<ul class="legend">${signs}</ul></div>`;
};

const contactHtml = ({ pin, line, verdict, word }: PinMark): string => {
  const said = verdict === 'normal' ? 'aside' : 'word';
  return `<li class="contact ${verdict}"><span class="pin">${nameHtml(pin)}</span>${signHtml(verdict)}<span class="line">${nameHtml(line)}</span><span class="${said}" dir="auto">${escapeHtml(word)}</span></li>`;
};

/** All pins in one thin strip, for a first glance; the words beside it say the same. */
export const stripHtml = (pins: readonly PinMark[]): string =>
  `<div class="strip" dir="ltr" aria-hidden="true">${pins
    .map(({ verdict }) => `<span class="${verdict}">${signHtml(verdict)}</span>`)
    .join('')}</div>`;

// Each kind of block as HTML.
import type { Block, Card, Cell, Column, Fact, Item, Table } from '../../core/report/document.js';
import { plain } from '../../core/words/report-phrase.js';
import { connectorHtml } from './connector-html.js';
import { escapeHtml } from './escape-html.js';
import { phraseHtml } from './phrase-html.js';
import { scaleHtml } from './scale-html.js';
import { traceHtml } from './trace-html.js';
import { signHtml, verdictHtml } from './verdict-marks.js';

export const blockHtml = (block: Block): string => {
  switch (block.kind) {
    case 'text':
      return `<p>${phraseHtml(block.text)}</p>`;
    case 'list':
      return listHtml(block.items);
    case 'facts':
      return factsHtml(block.facts);
    case 'card':
      return cardHtml(block);
    case 'table':
      return tableHtml(block);
    case 'connector':
      return connectorHtml(block);
    case 'trace':
      return traceHtml(block);
  }
};

const listHtml = (items: readonly Item[]): string => {
  const marked = items.some(({ verdict }) => verdict !== undefined);
  return `<ul${marked ? ' class="marked"' : ''}>${items.map(itemHtml).join('')}</ul>`;
};

const itemHtml = ({ verdict, text, small }: Item): string => {
  const sign = verdict === undefined ? '' : signHtml(verdict.verdict);
  const below = small === undefined ? '' : ` <span class="small">${phraseHtml(small)}</span>`;
  return `<li>${sign}${phraseHtml(text)}${below}</li>`;
};

const factsHtml = (facts: readonly Fact[]): string =>
  `<dl>${facts
    .map(
      ({ label, says }) =>
        `<div><dt>${phraseHtml(label)}</dt>${says.map((said) => `<dd>${phraseHtml(said)}</dd>`).join('')}</div>`,
    )
    .join('')}</dl>`;

const cardHtml = ({ verdict, title, facts }: Card): string =>
  `<article class="card ${verdict.verdict}"><h4>${verdictHtml(verdict)} <span class="of">${phraseHtml(title)}</span></h4>${factsHtml(facts)}</article>`;

/** Rows that are better kept on one sheet. */
const shortRows = 12;

const tableHtml = ({ caption, titled, columns, rows }: Table): string => {
  const head = columns
    .map(({ title, as }) => `<th scope="col" class="${as}">${phraseHtml(title)}</th>`)
    .join('');
  const body = rows.map((row) => `<tr>${row.map(cellHtml(columns)).join('')}</tr>`).join('\n');
  const name = escapeHtml(plain(caption));
  const classes = [
    ...(columns.every(({ as }) => as === 'figures') ? ['slim'] : []),
    ...(rows.length <= shortRows ? ['short'] : []),
  ].join(' ');
  const over = titled === true ? '' : ' class="aside"';
  return `<div class="wide" role="group" tabindex="0" aria-label="${name}"><table class="${classes}"><caption${over}>${phraseHtml(caption)}</caption><thead><tr>${head}</tr></thead>
<tbody>${body}</tbody></table></div>`;
};

const cellHtml =
  (columns: readonly Column[]) =>
  (cell: Cell, at: number): string => {
    const { text, small, verdict, scale, heads } = cell;
    const parts = [
      verdict === undefined ? '' : verdictHtml(verdict),
      scale === undefined ? '' : scaleHtml(scale),
      phraseHtml(text),
      small === undefined ? '' : `<span class="small">${phraseHtml(small)}</span>`,
    ];
    const as = columns[at]?.as ?? 'words';
    const content = parts.filter((part) => part !== '').join(' ');
    return heads === true
      ? `<th scope="row" class="${as}">${content}</th>`
      : `<td class="${as}">${content}</td>`;
  };

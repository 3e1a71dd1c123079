// Each kind of block as Markdown.
import type { Block, Card, Cell, Fact, Item, Table } from '../../core/report/document.js';
import { connectorMarkdown } from './connector-markdown.js';
import { escapeWords } from './escape-markdown.js';
import type { WritePhrase } from './phrase-markdown.js';

export const blockMarkdown = (block: Block, write: WritePhrase): string => {
  switch (block.kind) {
    case 'text':
      return write(block.text);
    case 'list':
      return block.items.map((item) => itemMarkdown(item, write)).join('\n');
    case 'facts':
      return factsMarkdown(block.facts, write);
    case 'card':
      return cardMarkdown(block, write);
    case 'table':
      return tableMarkdown(block, write);
    case 'connector':
      return connectorMarkdown(block);
    case 'trace':
      return '';
  }
};

const itemMarkdown = ({ verdict, text, small }: Item, write: WritePhrase): string => {
  const word = verdict === undefined ? '' : `**${escapeWords(verdict.word)}** `;
  return `- ${word}${write(text)}${small === undefined ? '' : ` ${write(small)}`}`;
};

const factsMarkdown = (facts: readonly Fact[], write: WritePhrase): string =>
  facts.map(({ label, says }) => `- **${write(label)}**: ${says.map(write).join('; ')}`).join('\n');

const cardMarkdown = ({ verdict, title, facts }: Card, write: WritePhrase): string =>
  `#### ${escapeWords(verdict.word)}: ${write(title)}\n\n${factsMarkdown(facts, write)}`;

/** The scale is a picture: its column is left out. */
const tableMarkdown = ({ caption, titled, columns, rows }: Table, write: WritePhrase): string => {
  const kept = columns.flatMap(({ as }, at) => (as === 'scale' ? [] : [at]));
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const pick = <T>(from: readonly T[]): T[] => kept.flatMap((at) => from[at] ?? []);
  return [
    ...(titled === true ? [`**${write(caption)}**`, ''] : []),
    line(pick(columns).map(({ title }) => write(title))),
    line(pick(columns).map(({ as }) => (as === 'figures' ? '---:' : '---'))),
    ...rows.map((row) => line(pick(row).map((cell) => cellMarkdown(cell, write)))),
  ].join('\n');
};

const cellMarkdown = ({ text, small, verdict }: Cell, write: WritePhrase): string =>
  [
    verdict === undefined ? '' : escapeWords(verdict.word),
    write(text),
    small === undefined ? '' : write(small),
  ]
    .filter((part) => part !== '')
    .join(', ');

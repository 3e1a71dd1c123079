// A section that is one table, or one sentence where there is nothing to tell.
import type { Phrase } from '../words/report-phrase.js';
import type { Section, Table } from './document.js';

export interface TableSection extends Pick<Table, 'columns' | 'rows'> {
  readonly id: string;
  readonly title: Phrase;
  /** Said in place of a table without rows. */
  readonly none: Phrase;
}

export const tableSection = ({ id, title, none, columns, rows }: TableSection): Section => ({
  id,
  title,
  blocks:
    rows.length === 0
      ? [{ kind: 'text', text: none }]
      : [{ kind: 'table', caption: title, columns, rows }],
});

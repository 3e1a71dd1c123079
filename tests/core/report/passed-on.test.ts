// What is less common in a session has its place in the report too, and a session passed on says what is missing.
import { describe, expect, it } from 'vitest';
import type { Block, ReportDocument } from '../../../src/core/report/document.js';
import type { Phrase } from '../../../src/core/words/report-phrase.js';
import { plain } from '../../../src/core/words/report-phrase.js';
import { makeDocument } from '../../report/make-report.js';
import { passedOn } from '../../report/passed-on-session.js';
import { eventful } from '../../report/session-events.js';

const blocksOf = ({ technical }: ReportDocument, id: string): readonly Block[] =>
  technical.sections.find((section) => section.id === id)?.blocks ?? [];

const rowsOf = (document: ReportDocument, id: string): string[][] =>
  blocksOf(document, id).flatMap((block) =>
    block.kind === 'table'
      ? block.rows.map((row) =>
          row.map((cell) => textOf(cell.text, cell.small, cell.verdict?.word)),
        )
      : [],
  );

const textOf = (...phrases: readonly (Phrase | undefined)[]): string =>
  phrases
    .flatMap((phrase) => (phrase === undefined ? [] : [plain(phrase)]))
    .join(' ')
    .trim();

describe('report of a session passed on', () => {
  const document = makeDocument(passedOn);

  it('should say that the customer data is gone, and of which record it is a part', () => {
    const titles = document.notices.map(({ title }) => plain(title));
    expect(titles).toContain("Without the customer's data.");
    const text = document.notices.map((notice) => plain(notice.text)).join(' ');
    expect(text).toContain('e8a6 c792 aa64 f998');
    expect(makeDocument(eventful).notices).toEqual([]);
  });

  it('should show presses at will with their marks and their trace', () => {
    expect(rowsOf(document, 'free-press')).toEqual([
      [
        ...['D0_P', 'FL1', 'does not read as it should', '3', '388.4 Ω', '1.0 s', 'yes'],
        'changed in 3 of 3, and 0 times between p 0.05',
      ],
    ]);
    const trace = blocksOf(document, 'free-press').find((block) => block.kind === 'trace');
    expect(trace?.kind === 'trace' && trace.presses.map(({ from }) => from)).toEqual([
      701.8, 705.8, 709.8,
    ]);
    expect(trace?.kind === 'trace' && trace.points).toHaveLength(60);
  });

  it('should show the places probed, in order, with verdict and limits', () => {
    expect(rowsOf(document, 'probed').map((row) => row.slice(0, 5))).toEqual([
      ['D0_P', 'FL1, side of the chip', '388.1(13) Ω', '349.2 to 426.8 Ω', 'normal'],
      ['D0_P', 'at the chip', 'overload', 'nothing known', 'open'],
    ]);
  });

  it('should say which acts came from a reply pad', () => {
    const acts = rowsOf(document, 'acts');
    expect(acts.at(-1)?.slice(1)).toEqual(['8', 'next', 'given by a reply pad']);
    expect(acts.filter((row) => row.join(' ').includes('reply pad'))).toHaveLength(1);
  });

  it('should leave out what did not happen', () => {
    const ids = makeDocument(eventful).technical.sections.map(({ id }) => id);
    expect(ids).not.toContain('free-press');
    expect(ids).not.toContain('probed');
  });
});

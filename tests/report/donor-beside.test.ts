// What a walk with a donor beside leaves in the report: both boards in a table, and the patient alone everywhere else.
import { describe, expect, it } from 'vitest';
import { renderCsv } from '../../src/report/csv/render-csv.js';
import { ohms, tellStory } from '../support/walk-story.js';
import { makeDocument, makeReport } from './make-report.js';

const story = tellStory({
  lines: [
    ['GND', { kind: 'ground' }],
    ['DATA', ohms(500)],
  ],
  donor: 'beside',
  noise: 0.0004,
})
  .touch(0.2, 1.2)
  .lift(1.1)
  .touch(0.2, 1.2)
  .lift(2)
  .touch(500, 1.2)
  .lift(1.7)
  .touch(520, 1.2);
const events = [story.opened, ...story.events];

describe('the report of a walk with a donor beside', () => {
  it.each(['en', 'ar'] as const)('should hold donor and patient side by side: %s', (language) => {
    const page = JSON.stringify(makeDocument(events, language));
    const section = page.slice(page.indexOf('"id":"donor"'), page.indexOf('"id":"pins"'));
    expect(section).toMatch(/500\.\d+\(\d+\) Ω/u);
    expect(section).toMatch(/520\.\d+\(\d+\) Ω/u);
    expect(section).toMatch(/\+4\.\d %|\+3\.9 %/u);
  });

  it('should count the patient’s pins alone', () => {
    const rows = renderCsv(makeReport(events)).trim().split('\r\n');
    expect(rows).toHaveLength(3);
    const columns = rows[0]?.split(',') ?? [];
    const data = rows[2]?.split(',') ?? [];
    const of = (column: string): string => data[columns.indexOf(column)] ?? '';
    expect(of('pin')).toBe('2');
    expect(Number(of('value'))).toBeCloseTo(520, -1);
    expect(of('donor_verdict')).toBe('normal');
    expect(Number(of('donor_value'))).toBeCloseTo(500, -1);
  });
});

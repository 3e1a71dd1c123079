// A report from events, with everything fixed that a file and a clock would give.
import type { WalkEvent } from '../../src/core/events.js';
import { accountOf } from '../../src/core/report/account.js';
import { buildReport } from '../../src/core/report/build-report.js';
import type { ReportDocument } from '../../src/core/report/document.js';
import type { Report } from '../../src/core/report/report.js';
import { type ReportLanguage, reportLanguages } from '../../src/core/words/report-languages.js';
import { wallTimes } from '../../src/report/wall-times.js';
import { numbered } from './session-events.js';

export const makeReport = (
  events: readonly WalkEvent[],
  source: Partial<Report['source']> = {},
  rechecks: Report['rechecks'] = [],
): Report => {
  const account = accountOf(numbered(events));
  if (account === null) throw new Error('the events hold no session');
  return {
    account,
    times: wallTimes(account),
    source: {
      file: 'session.jsonl',
      fingerprint: '0123456789abcdef'.repeat(4),
      events: events.length,
      unknownEvents: 0,
      tornBytes: 0,
      ...source,
    },
    rechecks,
    made: { program: '0.0.0', day: { year: 2026, month: 2, day: 3 } },
  };
};

export const makeDocument = (
  events: readonly WalkEvent[],
  language: ReportLanguage = 'en',
  rechecks: Report['rechecks'] = [],
): ReportDocument => buildReport(makeReport(events, {}, rechecks), reportLanguages[language]);

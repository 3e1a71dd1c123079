// `report`: the handover page of a saved session, or the same as Markdown, or its pins as CSV.
import { basename, extname } from 'node:path';
import { Command, Option } from 'commander';
import { cleanText } from '../core/clean-text.js';
import type { Numbered } from '../core/events.js';
import { accountOf } from '../core/report/account.js';
import { buildReport } from '../core/report/build-report.js';
import type { Report } from '../core/report/report.js';
import { programVersion } from '../core/version.js';
import { english } from '../core/words/english.js';
import {
  type ReportLanguage,
  reportLanguageCodes,
  reportLanguages,
} from '../core/words/report-languages.js';
import { renderCsv } from '../report/csv/render-csv.js';
import { renderHtml } from '../report/html/render-html.js';
import { renderMarkdown } from '../report/markdown/render-markdown.js';
import { today, wallTimes } from '../report/wall-times.js';
import { readSession, type SessionEnd } from '../store/journal-reader.js';
import { writeOut } from '../store/write-out.js';
import { configuration } from './configuration.js';
import { rechecksOf } from './job-rechecks.js';
import { refuseEmpty, refuseOtherKinds } from './named-session.js';
import { refuseSession } from './refuse-session.js';
import { say, sayDocument } from './say.js';

const reportFormats = ['html', 'csv', 'markdown'] as const;
export type ReportFormat = (typeof reportFormats)[number];

interface ReportOptions {
  readonly out?: string;
  readonly format?: ReportFormat;
  readonly language?: ReportLanguage;
  readonly force?: boolean;
  readonly json?: boolean;
}

const examples = `
Examples:
  pinwalk report session.jsonl
      writes session.html: a first page for the owner, technical pages after it
  pinwalk report session.jsonl --language ar --out handover.html
  pinwalk report session.jsonl --out pins.csv
  pinwalk report session.jsonl --format markdown --out -
      to standard output`;

export const reportCommand = (): Command =>
  new Command('report')
    .description('write the handover page of a saved session (HTML, CSV, Markdown)')
    .argument('<session>', 'a saved session')
    .argument('[rechecks...]', 'rechecks of it (default: those beside it or in the data folder)')
    .option('--out <file>', 'where to write, - for standard output (default: beside the session)')
    .addOption(
      new Option(
        '--format <name>',
        "what to write (default: by the file's ending, else html)",
      ).choices(reportFormats),
    )
    .addOption(
      new Option('--language <code>', "the report's language (default: en)").choices(
        reportLanguageCodes,
      ),
    )
    .option('--force', 'replace a file that is there already')
    .option('--json', 'one JSON object on stdout that names the file')
    .option('--plain', 'a line of text (the usual form)')
    .addHelpText('after', examples)
    .action(run);

const endings: Readonly<Record<ReportFormat, string>> = {
  html: '.html',
  csv: '.csv',
  markdown: '.md',
};

const run = (session: string, rechecks: readonly string[], options: ReportOptions): void => {
  const format = options.format ?? formatOf(options.out);
  const language = options.language ?? configuration().reportLanguage ?? 'en';
  const text = render(readReport(session, rechecks), format, language);
  const out =
    options.out ??
    `${session.slice(0, session.length - extname(session).length)}${endings[format]}`;
  if (out === '-') {
    sayDocument(text);
    return;
  }
  const { force = false } = options;
  if (force) refuseSession(out, out);
  writeOut(out, text, { force });
  say(options.json, english.reportWritten(cleanText(out, 300)), {
    type: 'report-written',
    file: out,
    format,
    language,
  });
};

const formatOf = (out: string | undefined): ReportFormat =>
  reportFormats.find(
    (format) => out !== undefined && extname(out).toLowerCase() === endings[format],
  ) ?? 'html';

const render = (report: Report, format: ReportFormat, language: ReportLanguage): string => {
  switch (format) {
    case 'csv':
      return renderCsv(report);
    case 'html':
      return renderHtml(buildReport(report, reportLanguages[language]), programVersion);
    case 'markdown':
      return renderMarkdown(buildReport(report, reportLanguages[language]));
  }
};

/** @throws FileError at the first line that is not sound: nothing is handed over that cannot be proven. */
const readReport = (session: string, rechecks: readonly string[]): Report => {
  refuseOtherKinds(session);
  let end: SessionEnd | undefined;
  function* events(): Generator<Numbered, void> {
    end = yield* readSession(session);
  }
  const account = accountOf(events());
  if (account === null || end?.chain === undefined) {
    return refuseEmpty(session);
  }
  return {
    account,
    times: wallTimes(account),
    source: {
      file: basename(session),
      fingerprint: end.chain,
      events: end.events,
      unknownEvents: end.others,
      tornBytes: end.tornBytes,
    },
    rechecks: rechecksOf(session, account.opened, rechecks),
    made: { program: programVersion, day: today(new Date()) },
  };
};

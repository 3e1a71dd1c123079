// Intake for a colleague: what was told, confirmed, measured and photographed before the walk, and the triage.

import type { Proposal, Residual } from '../../job/job.js';
import { isDischarged } from '../../job/residual.js';
import { formatReading } from '../../measure/format-reading.js';
import { foreign, join, name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { SharedWords } from '../../words/report-words.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Block, Fact, Section } from '../document.js';
import { momentCell } from '../moment-cells.js';
import type { Report } from '../report.js';
import { writtenPercent } from '../written.js';

const told = ['ticket', 'device', 'symptom', 'history', 'seen'] as const;

export const intakeSection = (report: Report, { shared }: TechnicalLanguage): Section | null => {
  const { job } = report.account;
  const blocks = [
    ...noted(report, shared),
    ...cautions(report, shared),
    ...residuals(report, shared),
    ...photos(report, shared),
    ...triage(report, shared),
  ];
  const isEmpty = Object.values(job).every(
    (part) => part === null || Object.keys(part as object).length === 0,
  );
  return isEmpty ? null : { id: 'intake', title: shared.job.title, blocks };
};

const noted = ({ account }: Report, { job: words }: SharedWords): readonly Block[] => {
  const { intake } = account.job;
  const facts = told.flatMap((field): readonly Fact[] => {
    const text = intake[field] ?? '';
    return text === '' ? [] : [{ label: words.field[field], says: [say`${foreign(text)}`] }];
  });
  const { dataMatters } = intake;
  if (dataMatters !== undefined) {
    facts.push({ label: words.field.dataMatters, says: [words.data[dataMatters]] });
  }
  return facts.length === 0 ? [] : [{ kind: 'facts', facts }];
};

const cautions = ({ account, times }: Report, shared: SharedWords): readonly Block[] => {
  const { title, by, none } = shared.job.cautions;
  const all = account.job.cautions;
  // They are confirmed together; who confirms them again says so at another moment.
  const when = new Map(
    all.map((caution) => {
      const moment = times.momentOf(caution.t);
      return [
        `${moment} ${caution.by}`,
        say`${value(moment)}${shared.comma}${by[caution.by]}`,
      ] as const;
    }),
  );
  if (all.length === 0) return [{ kind: 'text', text: say`${title}: ${none}` }];
  return [
    { kind: 'text', text: say`${title} (${join([...when.values()], shared.comma)}):` },
    { kind: 'list', items: all.map(({ says }) => ({ text: say`${foreign(says)}` })) },
  ];
};

const residuals = ({ account, times }: Report, shared: SharedWords): readonly Block[] => {
  const { residual } = shared.job;
  const all = account.job.residuals;
  if (all.length === 0) return [{ kind: 'text', text: say`${residual.title}: ${residual.none}` }];
  return [
    { kind: 'text', text: say`${residual.title}:` },
    {
      kind: 'table',
      caption: residual.title,
      columns: [
        { title: residual.at, as: 'words' },
        { title: residual.where, as: 'words' },
        { title: residual.volts, as: 'figures' },
        { title: residual.says, as: 'words' },
      ],
      rows: all.map((one) => [
        momentCell(times, one.t),
        ...residualCells(one, shared).map((text) => ({ text })),
      ]),
    },
  ];
};

const residualCells = (
  one: Residual,
  { comma, job: { residual: words } }: SharedWords,
): readonly [Phrase, Phrase, Phrase] => {
  if (one.type === 'residual-skipped') return ['', '', words.skipped(foreign(one.reason))];
  const limit = value(formatReading(one.limit, null, 'V'));
  const says = isDischarged(one.volts, one.limit) ? words.discharged(limit) : words.charged(limit);
  return [
    one.line === null ? words.input : say`${name(one.line)}`,
    say`${value(formatReading(one.volts, null, 'V'))}`,
    say`${says}${comma}${words.by[one.by]}`,
  ];
};

const photos = ({ account }: Report, { job: words }: SharedWords): readonly Block[] => {
  const { title, file, hash, size } = words.photos;
  if (account.job.photos.length === 0) return [];
  return [
    { kind: 'text', text: say`${title}:` },
    {
      kind: 'table',
      caption: title,
      columns: [
        { title: file, as: 'words' },
        { title: hash, as: 'words' },
        { title: size, as: 'figures' },
      ],
      rows: account.job.photos.map((photo) => [
        { text: say`${name(fileName(photo.file))}`, heads: true as const },
        { text: say`${value(photo.sha256)}` },
        { text: say`${value(String(photo.bytes))}` },
      ]),
    },
  ];
};

/** Folders are nobody's business outside the shop. */
const fileName = (path: string): string => path.split(/[/\\]/u).at(-1) ?? path;

const triage = ({ account }: Report, shared: SharedWords): readonly Block[] => {
  const { job, opened } = account;
  const words = shared.job.triage;
  if (job.observed.length === 0) return [];
  const table: Block = {
    kind: 'table',
    caption: words.title,
    columns: [
      { title: words.observation, as: 'words' },
      { title: words.answer, as: 'words' },
    ],
    rows: job.observed.map(({ asks, answer }) => [
      { text: say`${foreign(asks)}`, heads: true as const },
      { text: words.says[answer] },
    ]),
  };
  const groups = opened.profile.content.groups ?? {};
  const titled = (named: Proposal['walkFirst']): Phrase =>
    named.length === 0
      ? words.nothing
      : join(
          named.map(({ group }) =>
            foreign((Object.hasOwn(groups, group) && groups[group]?.title) || group),
          ),
          shared.comma,
        );
  const heading: Block = { kind: 'text', text: say`${words.title}:` };
  if (job.proposal === null) return [heading, table];
  const { symptoms, other, walkFirst, leaveAlone } = job.proposal;
  return [
    heading,
    table,
    {
      kind: 'facts',
      facts: [
        {
          label: words.likely,
          says: [
            ...symptoms
              .slice(0, 3)
              .map(
                ({ says, probability }) => say`${foreign(says)}: ${writtenPercent(probability)}`,
              ),
            say`${words.other}: ${writtenPercent(other)}`,
          ],
        },
        { label: words.walkFirst, says: [titled(walkFirst)] },
        { label: words.leaveAlone, says: [titled(leaveAlone)] },
      ],
    },
    { kind: 'text', text: words.how },
  ];
};

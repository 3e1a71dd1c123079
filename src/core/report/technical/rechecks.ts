// Each recheck: every pin walked again before and after, lines nobody touched, places pressed again.
import { name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { SharedWords } from '../../words/report-words.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Block, Cell, Fact, Section } from '../document.js';
import { marked } from '../marked.js';
import { exactReading } from '../readings.js';
import type { RecheckLog } from '../recheck-log.js';
import type { Report } from '../report.js';

/** Null where nothing was walked again. */
export const recheckSection = (
  report: Report,
  { shared }: TechnicalLanguage,
  unit: string,
): Section | null => {
  const words = shared.later.recheck;
  if (report.rechecks.length === 0) return null;
  return {
    id: 'recheck',
    title: words.title,
    blocks: [
      ...report.rechecks.flatMap((recheck) => blocksOf(recheck, report, shared, unit)),
      { kind: 'text', text: words.explained },
    ],
  };
};

const blocksOf = (
  { file, fingerprint, t, compared }: RecheckLog,
  { times }: Report,
  shared: SharedWords,
  unit: string,
): readonly Block[] => {
  const { later } = shared;
  const words = later.recheck;
  const facts: Fact[] = [
    { label: words.file, says: [say`${name(file)}`] },
    { label: words.fingerprint, says: [say`${name(fingerprint)}`] },
    { label: words.began, says: [say`${value(times.momentOf(t))}`] },
  ];
  if (compared === null) {
    return [
      { kind: 'facts', facts },
      { kind: 'text', text: words.notFinished },
    ];
  }
  facts.push(
    { label: words.result, says: [later.outcome[compared.outcome]] },
    { label: words.controls, says: [words.controlsAre[compared.controls]] },
  );
  if (compared.press.length > 0) {
    facts.push({
      label: words.pressed,
      says: compared.press.map(({ line, part, outcome }): Phrase => {
        const where = part === null ? say`${name(line)}` : say`${name(part)} (${name(line)})`;
        return say`${where}: ${words.pressIs[outcome]}`;
      }),
    });
  }
  const read = (of: (typeof compared.pins)[number]['before']): Cell => ({
    text: exactReading(
      {
        value: of.value ?? null,
        overload: of.overload ?? false,
        standardUncertainty: of.standardUncertainty,
      },
      unit,
      shared,
    ),
    verdict: marked(of.verdict, shared),
  });
  const rows = compared.pins.map((pin): Cell[] => [
    { text: say`${name(pin.pin)}`, heads: true },
    {
      text: say`${name(pin.line)}`,
      small: pin.because
        .map((reason) => later.because[reason])
        .reduce((all, why) => `${all}${shared.comma}${why}`),
    },
    read(pin.before),
    read(pin.after),
    { text: later.difference[pin.difference] },
    { text: pin.score === null ? '' : say`${value(writtenScore(pin.score))}` },
  ]);
  return [
    { kind: 'facts', facts },
    {
      kind: 'table',
      caption: words.caption,
      columns: [
        { title: words.pin, as: 'words' },
        { title: words.line, as: 'words' },
        { title: words.before, as: 'figures' },
        { title: words.after, as: 'figures' },
        { title: words.compared, as: 'words' },
        { title: words.score, as: 'figures' },
      ],
      rows,
    },
  ];
};

const writtenScore = (score: number): string => (score > 99 ? '> 99' : score.toFixed(1));

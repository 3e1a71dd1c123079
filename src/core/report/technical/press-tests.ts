// Every press test: what was pressed, what the line did, how unlikely that is by chance, and the trace itself.
import { formatReading } from '../../measure/format-reading.js';
import type { PlannedPin } from '../../profile/plan.js';
import { join, name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { SharedWords } from '../../words/report-words.js';
import type { TechnicalLanguage, TechnicalWords } from '../../words/report-words-technical.js';
import type { Block, Section, Table, Trace } from '../document.js';
import type { Pressed } from '../press-log.js';
import type { Report } from '../report.js';
import { writtenP } from '../written.js';
import { pressTrace } from './press-trace.js';

/** Null where nothing was pressed. */
export const pressSection = (
  { account }: Report,
  { shared, technical }: TechnicalLanguage,
  unit: string,
): Section | null => {
  const { tests, compared } = account.press;
  if (tests.length === 0) return null;
  const words = technical.press;
  const comparisons = compared.map(({ line, outcome, parts, shamPressed }): Block => {
    const names = join(parts.map(name), shared.comma);
    const said = words.compared(name(line), outcome, names);
    return {
      kind: 'text',
      text: shamPressed || outcome === 'none' ? said : say`${said} ${words.noSham}`,
    };
  });
  const traces = tests.flatMap((test) => {
    const pin = account.state.plan.pins.find(({ line }) => line === test.judged.line);
    return test.points.length < 2 ? [] : [traceOf(test, pin, words, shared)];
  });
  return {
    id: 'press',
    title: words.title,
    blocks: [
      tableOf(tests, words, shared, unit),
      ...comparisons,
      { kind: 'text', text: words.explained },
      ...traces,
    ],
  };
};

const tableOf = (
  tests: readonly Pressed[],
  words: TechnicalWords['press'],
  shared: SharedWords,
  unit: string,
): Table => {
  const read = (of: number | null): Phrase =>
    of === null ? shared.overload : say`${value(formatReading(of, null, unit))}`;
  return {
    kind: 'table',
    caption: words.title,
    columns: [
      { title: words.line, as: 'words' },
      { title: words.place, as: 'words' },
      { title: words.finding, as: 'words' },
      { title: words.answered, as: 'figures' },
      { title: words.pressedValue, as: 'figures' },
      { title: words.releasedValue, as: 'figures' },
      { title: words.raw, as: 'figures' },
      { title: words.adjusted, as: 'figures' },
    ],
    rows: tests.map((test) => {
      const { line, finding, answered, cycles, pValue, adjustedPValue } = test.judged;
      return [
        { text: say`${name(line)}`, heads: true },
        { text: placeOfTest(test, words) },
        { text: words.findings[finding] },
        { text: words.answeredOf(answered, cycles) },
        { text: read(test.judged.pressedValue) },
        { text: read(test.judged.releasedValue) },
        { text: writtenP(pValue) },
        { text: writtenP(adjustedPValue) },
      ];
    }),
  };
};

const traceOf = (
  test: Pressed,
  pin: PlannedPin | undefined,
  words: TechnicalWords['press'],
  shared: SharedWords,
): Trace => {
  const { judged, points, cues } = test;
  const end = points.at(-1)?.t ?? 0;
  return pressTrace({
    caption: words.trace(
      name(judged.line),
      placeOfTest(test, words),
      words.findings[judged.finding],
    ),
    points,
    presses: cues.flatMap(({ t, cue }, at) =>
      cue === 'press' ? [{ from: t, to: cues[at + 1]?.t ?? end }] : [],
    ),
    pin,
    words: { overload: shared.overload, limits: words.limits, press: words.pressing },
  });
};

const placeOfTest = ({ judged, sham }: Pressed, words: TechnicalWords['press']): Phrase => {
  if (sham) return words.bareBoard;
  return judged.part === null ? words.anyPlace : say`${name(judged.part)}`;
};

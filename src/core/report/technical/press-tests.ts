// Every press test: what was pressed, what the line did, how unlikely that is by chance, and the trace itself.
import { formatReading } from '../../measure/format-reading.js';
import type { PlannedPin } from '../../profile/plan.js';
import { placeFromLevel, placeOf } from '../../select/scale.js';
import { join, name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { SharedWords } from '../../words/report-words.js';
import type { TechnicalLanguage, TechnicalWords } from '../../words/report-words-technical.js';
import type { Block, Section, Table, Trace } from '../document.js';
import type { Pressed, PressPoint } from '../press-log.js';
import type { Report } from '../report.js';

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
    return { kind: 'text', text: shamPressed ? said : say`${said} ${words.noSham}` };
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

const placeOfTest = ({ judged, sham }: Pressed, words: TechnicalWords['press']): Phrase => {
  if (sham) return words.bareBoard;
  return judged.part === null ? words.anyPlace : say`${name(judged.part)}`;
};

/** Two digits; what rounds to nothing is said to be small, not nothing. */
const writtenP = (p: number): Phrase =>
  say`${value(p < 0.0001 ? '< 0.0001' : String(Number(p.toPrecision(2))))}`;

/** More than a printer can tell apart. */
const mostDrawn = 600;

const traceOf = (
  test: Pressed,
  pin: PlannedPin | undefined,
  words: TechnicalWords['press'],
  shared: SharedWords,
): Trace => {
  const { judged, points, cues } = test;
  const step = Math.ceil(points.length / mostDrawn);
  const drawn = points.filter((_, at) => at % step === 0);
  const [from, to] = [points[0]?.t ?? 0, points.at(-1)?.t ?? 0];
  const place = placer(points, pin);
  return {
    kind: 'trace',
    caption: words.trace(
      name(judged.line),
      placeOfTest(test, words),
      words.findings[judged.finding],
    ),
    from,
    to,
    points: drawn.map(({ t, value: v }) => ({ t, at: v === null ? null : place(v) })),
    presses: cues.flatMap(({ t, cue }, at) =>
      cue === 'press' ? [{ from: t, to: cues[at + 1]?.t ?? to }] : [],
    ),
    hasLimits: isBounded(pin),
    words: { overload: shared.overload, limits: words.limits, press: words.pressing },
  };
};

const isBounded = (pin: PlannedPin | undefined): boolean =>
  typeof pin?.expected === 'object' && pin.expected !== null;

/** Between the limits of a good board where there are any, else about the middle of what was read. */
const placer = (points: readonly PressPoint[], pin: PlannedPin | undefined) => {
  const values = points.flatMap(({ value: v }) => (v === null ? [] : [v])).sort((a, b) => a - b);
  const level = values[Math.floor(values.length / 2)] ?? 1;
  return (v: number): number => placeOf(v, pin?.expected ?? null)?.at ?? placeFromLevel(v, level);
};

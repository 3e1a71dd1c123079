// Presses at will: where the line rested, how often it left, whether that repeats, and the trace itself.
import { formatReading } from '../../measure/format-reading.js';
import { median } from '../../numbers/median.js';
import { name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { SharedWords } from '../../words/report-words.js';
import type { TechnicalLanguage, TechnicalWords } from '../../words/report-words-technical.js';
import type { Cell, Section, Trace } from '../document.js';
import type { FreelyPressed } from '../press-log.js';
import type { Report } from '../report.js';
import { writtenP, writtenSpan } from '../written.js';
import { pressTrace } from './press-trace.js';

/** Null where nothing was pressed at will. */
export const freePressSection = (
  { account }: Report,
  { shared, technical }: TechnicalLanguage,
  unit: string,
): Section | null => {
  const { free } = account.press;
  if (free.length === 0) return null;
  const words = technical.freePress;
  const { pins } = account.state.plan;
  const traceOf = ({ traced, points, marks }: FreelyPressed): Trace =>
    pressTrace({
      caption: words.trace(name(traced.line)),
      points,
      presses: marks,
      pin: pins.find(({ line }) => line === traced.line),
      words: {
        overload: shared.overload,
        limits: technical.press.limits,
        press: words.marked,
      },
    });
  return {
    id: 'free-press',
    title: words.title,
    blocks: [
      {
        kind: 'table',
        caption: words.title,
        columns: [
          { title: technical.press.line, as: 'words' },
          { title: technical.press.place, as: 'words' },
          { title: words.rests, as: 'words' },
          { title: words.left, as: 'figures' },
          { title: words.reads, as: 'figures' },
          { title: words.dwell, as: 'figures' },
          { title: words.repeats, as: 'words' },
          { title: words.marked, as: 'words' },
        ],
        rows: free.map(({ traced }) => rowOf(traced, technical, shared, unit)),
      },
      { kind: 'text', text: words.explained },
      ...free.filter(({ points }) => points.length > 1).map(traceOf),
    ],
  };
};

const rowOf = (
  { line, part, rests, excursions, medianDwell, repeats, marked }: FreelyPressed['traced'],
  { press, freePress: words }: TechnicalWords,
  shared: SharedWords,
  unit: string,
): readonly Cell[] => {
  const values = excursions.flatMap((away) => (away.value === null ? [] : [away.value]));
  const nothing: Phrase = say`${value('-')}`;
  const reads = (): Phrase => {
    if (excursions.length === 0) return nothing;
    return 2 * values.length > excursions.length
      ? say`${value(formatReading(median(values), null, unit))}`
      : shared.overload;
  };
  return [
    { text: say`${name(line)}`, heads: true },
    { text: part === null ? press.anyPlace : say`${name(part)}` },
    { text: rests === null ? nothing : words.restsAt[rests] },
    { text: say`${value(String(excursions.length))}` },
    { text: reads() },
    { text: medianDwell === null ? nothing : say`${writtenSpan(medianDwell)}` },
    { text: repeats ? words.doesRepeat : words.doesNotRepeat },
    marked === null
      ? { text: words.noMarks }
      : {
          text: words.marks(marked.awayPressed, marked.presses, marked.awayBetween),
          small: say`${value('p')} ${writtenP(marked.pValue)}`,
        },
  ];
};

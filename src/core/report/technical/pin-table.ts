// Every pin in walking order: what it read, with its uncertainty, between which limits, and the verdict.
import { placeOf } from '../../select/scale.js';
import { foreign, join, name, type Phrase, say } from '../../words/report-phrase.js';
import type { TechnicalLanguage, TechnicalWords } from '../../words/report-words-technical.js';
import type { Cell, Column, ScaleMark, Section } from '../document.js';
import { marked } from '../marked.js';
import { isFaulty, type PinFacts } from '../pin-facts.js';
import { exactReading, goodBoard } from '../readings.js';
import { writtenPercent } from '../written.js';
import { confidenceWord } from './confidence.js';

export const pinTableSection = (
  pins: readonly PinFacts[],
  language: TechnicalLanguage,
  unit: string,
): Section => {
  const words = language.technical.pins;
  const columns: readonly Column[] = [
    { title: words.pin, as: 'words' },
    { title: words.line, as: 'words' },
    { title: words.read, as: 'figures' },
    { title: words.scale, as: 'scale' },
    { title: words.good, as: 'figures' },
    { title: words.verdict, as: 'words' },
    { title: words.confidence, as: 'words' },
  ];
  const rows = pins.map((pin) => rowOf(pin, language, unit));
  return {
    id: 'pins',
    title: words.title,
    blocks: [
      { kind: 'table', caption: words.caption, columns, rows },
      { kind: 'text', text: words.digits },
    ],
  };
};

const rowOf = (
  pin: PinFacts,
  { shared, technical }: TechnicalLanguage,
  unit: string,
): readonly Cell[] => {
  const { planned, record, line } = pin;
  const words = technical.pins;
  const { expected, verdict } = record;
  const remarks = remarksOn(pin, technical);
  const scale = scaleOf(pin);
  return [
    { text: say`${name(planned.pin)}`, heads: true },
    {
      text: say`${name(planned.line)}`,
      small: line?.title === undefined ? words.kind[planned.kind] : say`${foreign(line.title)}`,
    },
    { text: verdict === 'unread' ? '' : exactReading(record, unit, shared) },
    { text: '', ...(scale === null ? {} : { scale }) },
    { text: expected === null ? words.nothingExpected : goodBoard(expected, unit, shared) },
    {
      text: '',
      verdict: marked(verdict, shared),
      ...(remarks.length === 0 ? {} : { small: join(remarks, shared.comma) }),
    },
    confidenceCell(record, technical),
  ];
};

const confidenceCell = (record: PinFacts['record'], technical: TechnicalWords): Cell =>
  record.verdict === 'unread'
    ? { text: '' }
    : {
        text: confidenceWord(record, technical),
        small: say`${writtenPercent(record.confidence)}`,
      };

const remarksOn = (
  { record, touches, agreeing, confirmed }: PinFacts,
  { pins: words }: TechnicalWords,
): readonly Phrase[] => [
  ...(touches.length > 1 ? [words.touches(touches.length)] : []),
  ...(isFaulty(record.verdict) && agreeing < 2 && !confirmed ? [words.unrepeated] : []),
];

/** Null where nothing bounds the reading, or nothing was read. */
const scaleOf = ({ record }: PinFacts): ScaleMark | null => {
  const { value, overload, standardUncertainty, expected, verdict } = record;
  if (expected === null || expected === 'overload') return null;
  if (overload) return { at: 1, beyond: 'above', from: 1, to: 1, verdict };
  const place = value === null ? null : placeOf(value, expected);
  if (value === null || place === null) return null;
  const spread = 2 * (standardUncertainty ?? 0);
  const at = (where: number): number => placeOf(where, expected)?.at ?? place.at;
  return { ...place, from: at(value - spread), to: at(value + spread), verdict };
};

// The places probed along a line, between its pin and the chip, in the order in which they were probed.
import { name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Section } from '../document.js';
import { marked } from '../marked.js';
import { exactReading, goodBoard } from '../readings.js';
import type { Report } from '../report.js';
import { confidenceIn } from './confidence.js';

/** Null where no place was probed. */
export const probedPlacesSection = (
  { account, times }: Report,
  { shared, technical }: TechnicalLanguage,
  unit: string,
): Section | null => {
  const { probed } = account.press;
  if (probed.length === 0) return null;
  const words = technical.probed;
  const { pins } = technical;
  const placeOf = ({ part, side }: (typeof probed)[number]): Phrase =>
    part === null ? words.atChip : words.side(name(part), side === 'near');
  return {
    id: 'probed',
    title: words.title,
    blocks: [
      {
        kind: 'table',
        caption: words.title,
        columns: [
          { title: pins.line, as: 'words' },
          { title: words.place, as: 'words' },
          { title: pins.read, as: 'figures' },
          { title: pins.good, as: 'figures' },
          { title: pins.verdict, as: 'words' },
          { title: pins.confidence, as: 'words' },
          { title: technical.acts.at, as: 'words' },
        ],
        rows: probed.map((place) => {
          const { line, value: v = null, overload = false, standardUncertainty, expected } = place;
          const read = { value: v, overload, standardUncertainty };
          return [
            { text: say`${name(line)}`, heads: true as const },
            { text: placeOf(place) },
            { text: exactReading(read, unit, shared) },
            { text: expected === null ? pins.nothingExpected : goodBoard(expected, unit, shared) },
            { text: '', verdict: marked(place.verdict, shared) },
            { text: confidenceIn(place, technical) },
            { text: say`${value(times.momentOf(place.to))}` },
          ];
        }),
      },
      { kind: 'text', text: words.explained },
    ],
  };
};

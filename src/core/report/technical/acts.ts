// Notes and acts in the order in which they came, with what was refused and where the walk put itself right.
import { foreign, join, type Phrase, say } from '../../words/report-phrase.js';
import type { TechnicalLanguage, TechnicalWords } from '../../words/report-words-technical.js';
import type { ActEntry } from '../act-log.js';
import type { Section } from '../document.js';
import { momentCell, pinCell } from '../moment-cells.js';
import type { Report } from '../report.js';
import { tableSection } from '../table-section.js';

export const actsSection = (
  { account, times }: Report,
  { technical }: TechnicalLanguage,
): Section => {
  const words = technical.acts;
  const rows = account.acts.map((entry) => [
    momentCell(times, entry.t),
    pinCell('pin' in entry ? entry.pin : undefined),
    ...told(entry, words).map((text) => ({ text })),
  ]);
  return tableSection({
    id: 'acts',
    title: words.title,
    none: words.none,
    columns: [
      { title: words.at, as: 'words' },
      { title: technical.pins.pin, as: 'words' },
      { title: words.act, as: 'words' },
      { title: words.detail, as: 'words' },
    ],
    rows,
  });
};

const detailsOf = (
  { text, by }: Extract<ActEntry, { type: 'act-taken' }>,
  words: TechnicalWords['acts'],
): readonly Phrase[] => [
  ...(text === undefined ? [] : [say`${foreign(text)}`]),
  ...(by === 'pad' ? [words.byPad] : []),
];

const told = (entry: ActEntry, words: TechnicalWords['acts']): readonly [Phrase, Phrase] => {
  switch (entry.type) {
    case 'act-taken':
      return [words.name[entry.act], join(detailsOf(entry, words), ' ')];
    case 'act-refused':
      return [words.refused(words.name[entry.act]), say`${foreign(entry.reason)}`];
    case 'walk-realigned':
      return [words.realigned, words.moved(entry.shift)];
    case 'ground-doubted':
      return [words.groundDoubted, words.opens(entry.opens)];
  }
};

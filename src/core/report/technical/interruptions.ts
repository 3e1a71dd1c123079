// When nothing could be measured, why, and for how long.
import { foreign, type Phrase, say } from '../../words/report-phrase.js';
import type { TechnicalLanguage, TechnicalWords } from '../../words/report-words-technical.js';
import type { Section } from '../document.js';
import type { Interruption } from '../interruption-log.js';
import { momentCell, pinCell } from '../moment-cells.js';
import type { Report } from '../report.js';
import { tableSection } from '../table-section.js';
import { writtenSpan } from '../written.js';

export const interruptionsSection = (
  { account, times }: Report,
  { technical }: TechnicalLanguage,
): Section => {
  const words = technical.interruptions;
  const rows = account.interruptions.map((interruption) => {
    const { from, to, pin, detail } = interruption;
    return [
      momentCell(times, from),
      pinCell(pin),
      { text: to === null ? words.notOver : say`${writtenSpan(to - from)}` },
      {
        text: what(interruption, words),
        ...(detail === '' || isSaid(interruption, words) ? {} : { small: say`${foreign(detail)}` }),
      },
    ];
  });
  return tableSection({
    id: 'interruptions',
    title: words.title,
    none: words.none,
    columns: [
      { title: words.from, as: 'words' },
      { title: technical.pins.pin, as: 'words' },
      { title: words.lasted, as: 'figures' },
      { title: words.what, as: 'words' },
    ],
    rows,
  });
};

/** The file's own words add nothing. */
const isSaid = ({ hold, detail }: Interruption, words: TechnicalWords['interruptions']): boolean =>
  hold !== null && words.held[hold] === detail;

const what = ({ kind, hold }: Interruption, words: TechnicalWords['interruptions']): Phrase =>
  hold === null ? words.says[kind] : `${words.says[kind]}: ${words.held[hold]}`;

// What the walk asked, when, and how it was answered.
import { type Phrase, say } from '../../words/report-phrase.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Section } from '../document.js';
import { momentCell, pinCell } from '../moment-cells.js';
import type { Report } from '../report.js';
import { tableSection } from '../table-section.js';
import { writtenSpan } from '../written.js';

export const questionsSection = (
  { account, times }: Report,
  { technical }: TechnicalLanguage,
): Section => {
  const words = technical.questions;
  const rows = account.asked.map(({ question, pin, askedT, answer }) => [
    momentCell(times, askedT),
    pinCell(pin),
    { text: words.says[question] },
    { text: answer === null ? words.unanswered : words.by[answer.by] },
    { text: answer === null ? '' : after(answer.t - askedT) },
  ]);
  return tableSection({
    id: 'questions',
    title: words.title,
    none: words.none,
    columns: [
      { title: words.asked, as: 'words' },
      { title: technical.pins.pin, as: 'words' },
      { title: words.question, as: 'words' },
      { title: words.answer, as: 'words' },
      { title: words.after, as: 'figures' },
    ],
    rows,
  });
};

const after = (seconds: number): Phrase => say`${writtenSpan(seconds)}`;

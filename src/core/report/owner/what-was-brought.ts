// What was brought in and why, as it was told at intake.
import { brief, say } from '../../words/report-phrase.js';
import type { ReportWords } from '../../words/report-words.js';
import type { Account } from '../account.js';
import type { Fact, Section } from '../document.js';

const told = ['ticket', 'device', 'symptom', 'history', 'seen'] as const;

export const whatWasBrought = (
  { job: { intake } }: Account,
  { shared: { job: words } }: ReportWords,
): Section | null => {
  const facts = told.flatMap((field): readonly Fact[] => {
    const text = intake[field] ?? '';
    return text === '' ? [] : [{ label: words.field[field], says: [say`${brief(text)}`] }];
  });
  if (facts.length === 0) return null;
  return { id: 'brought', title: words.broughtTitle, blocks: [{ kind: 'facts', facts }] };
};

/** Whether the owner's data matters, where that was noted. */
export const dataNote = (
  { job: { intake } }: Account,
  { shared: { job: words } }: ReportWords,
): readonly string[] =>
  intake.dataMatters === undefined ? [] : [words.dataMatters[intake.dataMatters]];

// Where the expected values come from, and on how many boards they rest.
import { foreign, name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Fact, Section } from '../document.js';
import type { Report } from '../report.js';

export const expectedSection = (
  { account }: Report,
  { shared, technical }: TechnicalLanguage,
): Section => {
  const words = technical.expected;
  const { id, title, provenance } = account.opened.profile.content;
  const facts: Fact[] = [
    { label: words.profile, says: [say`${name(id)}${shared.comma}${foreign(title)}`] },
    { label: words.by, says: [say`${foreign(provenance.by)}`] },
    { label: words.date, says: [say`${value(provenance.date)}`] },
    { label: words.how, says: [say`${foreign(provenance.how)}`] },
  ];
  if (provenance.source !== undefined) {
    facts.push({ label: words.source, says: [say`${foreign(provenance.source)}`] });
  }
  facts.push({ label: words.boards, says: boardsOf(account.opened, words) });
  return {
    id: 'expected',
    title: words.title,
    blocks: [
      { kind: 'facts', facts },
      { kind: 'text', text: words.holdFor },
    ],
  };
};

const boardsOf = (
  { profile, measure }: Report['account']['opened'],
  words: TechnicalLanguage['technical']['expected'],
): readonly Phrase[] => {
  const lines = new Map<number, number>();
  for (const { expect } of Object.values(profile.content.lines)) {
    const expected = expect?.[measure.function];
    const boards = typeof expected === 'object' ? expected.from?.boards : undefined;
    if (boards !== undefined) lines.set(boards, (lines.get(boards) ?? 0) + 1);
  }
  return lines.size === 0
    ? [words.unstated]
    : [...lines].sort(([a], [b]) => a - b).map(([boards, n]) => words.boardsOf(boards, n));
};

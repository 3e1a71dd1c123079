// The session file behind the report, its fingerprint, and how anyone can verify that the two belong together.
import { name, type Phrase, say, value } from '../../words/report-phrase.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Fact, Section } from '../document.js';
import type { Report } from '../report.js';

export const recordSection = (
  { account, times, source }: Report,
  { shared, technical }: TechnicalLanguage,
): Section => {
  const words = technical.record;
  const { opened, sittings } = account;
  const entries: Phrase[] = [String(source.events)];
  if (source.unknownEvents > 0) entries.push(words.unknown(source.unknownEvents));
  if (source.tornBytes > 0) entries.push(words.torn(source.tornBytes));
  const facts: Fact[] = [
    { label: words.file, says: [say`${name(source.file)}`] },
    { label: words.fingerprint, says: [say`${name(source.fingerprint)}`] },
    { label: words.entries, says: entries },
    {
      label: words.openings,
      says: sittings.map(
        ({ t, program }) =>
          say`${name(`pinwalk ${program}`)}${shared.comma}${value(times.momentOf(t))}`,
      ),
    },
    { label: words.profileHash, says: [say`${name(opened.profile.sha256)}`] },
  ];
  if (opened.driver !== null) {
    facts.push({ label: words.driverHash, says: [say`${name(opened.driver.sha256)}`] });
  }
  return {
    id: 'record',
    title: words.title,
    blocks: [
      { kind: 'facts', facts },
      { kind: 'text', text: words.verify(name(`pinwalk check ${source.file}`)) },
      { kind: 'text', text: words.limits },
    ],
  };
};

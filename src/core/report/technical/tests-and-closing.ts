// What was tested once the board was together again, and how the job was closed.
import { foreign, name, say, value } from '../../words/report-phrase.js';
import type { TechnicalLanguage } from '../../words/report-words-technical.js';
import type { Fact, Section } from '../document.js';
import type { Report } from '../report.js';

/** Null where nothing was tested and nothing closed. */
export const testsSection = (
  { account, times }: Report,
  { shared }: TechnicalLanguage,
): Section | null => {
  const { powerChecks, functionTests, closed } = account.rework;
  const { later } = shared;
  const words = later.tests;
  if (powerChecks.length === 0 && functionTests.length === 0 && closed === null) return null;
  const figure = (of: number | undefined, unit: string) =>
    of === undefined ? null : value(`${of} ${unit}`);
  const facts: Fact[] = [];
  for (const { t, amperes, volts, limit, draw, note } of powerChecks) {
    const drawn = words.drawn(
      figure(amperes, 'A'),
      figure(volts, 'V'),
      figure(limit, 'A'),
      later.draw[draw],
    );
    const said = say`${value(times.momentOf(t))}${shared.comma}${drawn}`;
    facts.push({
      label: words.power,
      says: note === undefined ? [said] : [said, say`${foreign(note)}`],
    });
  }
  for (const { t, tested, works, note } of functionTests) {
    const said = say`${value(times.momentOf(t))}${shared.comma}${foreign(tested)}: ${later.works[works]}`;
    facts.push({
      label: words.function,
      says: note === undefined ? [said] : [said, say`${foreign(note)}`],
    });
  }
  if (closed === null) facts.push({ label: words.closed, says: [words.open] });
  else {
    const { t, as, reason, cause, recheck } = closed;
    facts.push({
      label: words.closed,
      says: [say`${later.as[as]}${shared.comma}${value(times.momentOf(t))}`],
    });
    if (reason !== undefined) facts.push({ label: words.reason, says: [say`${foreign(reason)}`] });
    if (cause !== undefined) facts.push({ label: words.cause, says: [say`${name(cause)}`] });
    if (recheck !== undefined) {
      facts.push({ label: words.restsOn, says: [say`${name(recheck.file)}`] });
    }
  }
  return { id: 'tests', title: words.title, blocks: [{ kind: 'facts', facts }] };
};

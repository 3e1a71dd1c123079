// What the first page says once the board was worked on: what was done, what was measured and tested again, how it
// ended, and what of that is not proven.
import { doubtAbout } from '../../recheck/closing.js';
import { placeName } from '../../rework/heat-limits.js';
import { brief, join, type Phrase } from '../../words/report-phrase.js';
import type { ReportWords } from '../../words/report-words.js';
import type { Summary } from '../document.js';
import type { Report } from '../report.js';
import { placeInWords } from '../technical/rework.js';
import { writtenSpan } from '../written.js';

/** More would push the rest off the first page. */
const mostDone = 4;
const mostTests = 2;

export const isWorkedOn = ({ account: { rework } }: Report): boolean =>
  rework.logged.length > 0 || rework.runs.length > 0 || rework.closed !== null;

/** The page in one sentence, once the job is closed. */
export const closedHeadline = (
  report: Report,
  { shared }: ReportWords,
): Pick<Summary, 'tone' | 'headline'> | null => {
  const { closed } = report.account.rework;
  const { owner } = shared.later;
  switch (closed?.as) {
    case undefined:
      return null;
    case 'repaired': {
      const proven = doubtOf(report) === null && !failsTest(report);
      return { tone: proven ? 'sound' : 'doubt', headline: owner.repaired(proven) };
    }
    case 'partly-repaired':
      return { tone: 'doubt', headline: owner.partlyRepaired };
    case 'not-repaired':
      return { tone: 'fault', headline: owner.notRepaired };
    case 'returned':
      return { tone: 'fault', headline: owner.returned };
  }
};

export const doneInWords = (report: Report, { shared }: ReportWords): readonly Phrase[] => {
  const { logged, closed } = report.account.rework;
  const { later } = shared;
  const groups = new Map<string, typeof logged>();
  for (const entry of logged) {
    const key = `${placeName(entry) ?? ''} ${entry.action}`;
    groups.set(key, [...(groups.get(key) ?? []), entry]);
  }
  const done = [...groups.values()].flatMap((entries): Phrase[] => {
    const [first] = entries;
    if (first === undefined) return [];
    const heat = entries.reduce((sum, { seconds }) => sum + (seconds ?? 0), 0);
    return [
      later.owner.done(
        placeInWords(first, shared),
        later.action[first.action],
        entries.length,
        heat === 0 ? null : writtenSpan(heat),
      ),
    ];
  });
  const listed = done.slice(0, mostDone);
  if (done.length > mostDone) listed.push(later.owner.moreDone(done.length - mostDone));
  return [
    ...(listed.length === 0 ? [] : [join(listed, ' ')]),
    // Where the measurements speak for themselves the reason can stand on the technical pages.
    ...(closed?.reason === undefined || doubtOf(report) === null
      ? []
      : [later.owner.reason(brief(closed.reason))]),
  ];
};

export const checkedAfterWork = (report: Report, { shared }: ReportWords): readonly Phrase[] => {
  const { later } = shared;
  const { powerChecks, functionTests } = report.account.rework;
  const compared = report.rechecks.at(-1)?.compared;
  const power = powerChecks.at(-1);
  const texts: Phrase[] = [];
  if (compared != null) {
    const read = compared.pins.filter(({ after }) => after.verdict !== 'unread').length;
    texts.push(later.owner.rechecked(read, compared.pins.length, later.outcome[compared.outcome]));
    // One part that was loose on two lines is one place.
    const stays = new Set(
      compared.press
        .filter(({ outcome }) => outcome === 'stays')
        .map(({ line, part }) => part ?? `line ${line}`),
    ).size;
    if (stays > 0) texts.push(later.owner.pressedAgain(stays));
  }
  if (power !== undefined) texts.push(later.owner.power(later.draw[power.draw]));
  for (const { tested, works } of functionTests.slice(-mostTests)) {
    texts.push(later.owner.functionTested(brief(tested), later.works[works]));
  }
  return texts;
};

/** What speaks against taking the work as proven. */
export const uncheckedAfterWork = (report: Report, { shared }: ReportWords): readonly Phrase[] => {
  if (!isWorkedOn(report)) return [];
  const { later } = shared;
  const doubt = doubtOf(report);
  return [
    ...(doubt === null ? [] : [later.doubt[doubt]]),
    ...(report.account.rework.powerChecks.length === 0 ? [later.owner.noPower] : []),
  ];
};

const doubtOf = ({ account, rechecks }: Report) =>
  doubtAbout(account.rework, rechecks.at(-1) ?? null);

const failsTest = ({ account: { rework } }: Report): boolean =>
  rework.functionTests.at(-1)?.works !== undefined && rework.functionTests.at(-1)?.works !== 'yes';

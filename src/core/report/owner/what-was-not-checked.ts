// What was not checked: as important to an owner as what was.

import type { Phrase } from '../../words/report-phrase.js';
import type { NamedPins, ReportWords } from '../../words/report-words.js';
import type { Section } from '../document.js';
import { isFaulty, isUnclear, type PinFacts } from '../pin-facts.js';
import type { Report } from '../report.js';
import { uncheckedAfterWork } from './after-work.js';
import { namedAs, namedPins } from './named-pins.js';

export const whatWasNotChecked = (
  report: Report,
  pins: readonly PinFacts[],
  words: ReportWords,
): Section => {
  const { shared } = words;
  const { unchecked } = words.owner;
  const isTested = report.account.rework.functionTests.length > 0;
  const kinds: readonly (readonly [(pins: NamedPins) => Phrase, (pin: PinFacts) => boolean])[] = [
    [unchecked.unclear, ({ record }) => isUnclear(record.verdict)],
    [unchecked.unrepeated, isUnrepeated],
    [
      unchecked.nothingExpected,
      ({ record }) => record.expected === null && record.verdict === 'normal',
    ],
    [
      unchecked.readsNothing,
      ({ record }) => record.expected === 'overload' && record.verdict === 'normal',
    ],
  ];
  const items: Phrase[] = isTested ? [] : [unchecked.function];
  items.push(...uncheckedAfterWork(report, words));
  const unread = namedAs(unreadPins(report, pins), shared);
  if (unread !== null) items.push(unchecked.unread(unread));
  for (const [says, is] of kinds) {
    const named = namedPins(pins, shared, is);
    if (named !== null) items.push(says(named));
  }
  items.push(unchecked.behind);
  return {
    id: 'unchecked',
    title: unchecked.title,
    blocks: [{ kind: 'list', items: items.map((text) => ({ text })) }],
  };
};

/** With those that a walk of some pins only left out. */
const unreadPins = ({ account }: Report, pins: readonly PinFacts[]): readonly string[] => {
  const read = new Set(
    pins.flatMap(({ planned, record }) => (record.verdict === 'unread' ? [] : [planned.pin])),
  );
  return account.opened.profile.content.connector.pins
    .map(({ pin }) => pin)
    .filter((pin) => !read.has(pin));
};

const isUnrepeated = ({ record, agreeing, confirmed }: PinFacts): boolean =>
  isFaulty(record.verdict) && agreeing < 2 && !confirmed;

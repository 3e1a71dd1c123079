// What was checked: which pins, with what, and whether the ground lead was.
import { brief, name, type Phrase } from '../../words/report-phrase.js';
import type { ReportWords } from '../../words/report-words.js';
import type { Section } from '../document.js';
import type { PinFacts } from '../pin-facts.js';
import type { Report } from '../report.js';
import { checkedAfterWork } from './after-work.js';

export const whatWasChecked = (
  report: Report,
  pins: readonly PinFacts[],
  words: ReportWords,
): Section => {
  const { checked } = words.owner;
  const { account } = report;
  const { opened, ground, meter, sittings, press } = account;
  const read = pins.filter(({ record }) => record.verdict !== 'unread').length;
  const connector = name(opened.profile.content.connector.id);
  const items: Phrase[] = [
    checked.pins(read, pins.length, connector, opened.measure.function),
    ...[...meter.identities].map((identity) => checked.meter(brief(identity))),
  ];
  if (opened.link.startsWith('stdin:')) items.push(checked.typed);
  if (ground.outcome === 'good') items.push(checked.groundGood);
  else items.push(checked.groundSkipped);
  if (press.tests.length > 0) items.push(checked.presses(press.tests.length));
  const again = sittings.filter((sitting) =>
    'work' in sitting ? sitting.work !== 'record' : true,
  );
  if (again.length > 1) items.push(checked.sittings(again.length - 1));
  items.push(...checkedAfterWork(report, words));
  return {
    id: 'checked',
    title: checked.title,
    blocks: [{ kind: 'list', items: items.map((text) => ({ text })) }],
  };
};

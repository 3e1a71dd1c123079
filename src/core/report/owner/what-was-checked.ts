// What was checked: which pins, with what, and whether the ground lead was.
import { brief, name, type Phrase } from '../../words/report-phrase.js';
import type { ReportWords } from '../../words/report-words.js';
import type { Account } from '../account.js';
import type { Section } from '../document.js';
import type { PinFacts } from '../pin-facts.js';

export const whatWasChecked = (
  account: Account,
  pins: readonly PinFacts[],
  { owner }: ReportWords,
): Section => {
  const { checked } = owner;
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
  if (sittings.length > 1) items.push(checked.sittings(sittings.length - 1));
  return {
    id: 'checked',
    title: checked.title,
    blocks: [{ kind: 'list', items: items.map((text) => ({ text })) }],
  };
};

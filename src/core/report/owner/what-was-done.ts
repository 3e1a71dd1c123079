// What was done to the device, as far as the session records it.
import type { Phrase } from '../../words/report-phrase.js';
import type { ReportWords } from '../../words/report-words.js';
import type { Account } from '../account.js';
import type { Section } from '../document.js';
import type { PinFacts } from '../pin-facts.js';

export const whatWasDone = (
  { acts }: Pick<Account, 'acts'>,
  pins: readonly PinFacts[],
  { owner }: ReportWords,
): Section => {
  const { done } = owner;
  const notes = acts.filter((entry) => entry.type === 'act-taken' && entry.act === 'note').length;
  const nothing = pins.every(({ record }) => record.verdict === 'unread');
  const texts: Phrase[] = [nothing ? done.nothing : done.measuredOnly];
  if (notes > 0) texts.push(done.notes(notes));
  return { id: 'done', title: done.title, blocks: texts.map((text) => ({ kind: 'text', text })) };
};

// What was done to the device, as far as the session records it.
import type { ReportWords } from '../../words/report-words.js';
import type { Account } from '../account.js';
import type { Section } from '../document.js';

export const whatWasDone = ({ acts }: Account, { owner }: ReportWords): Section => {
  const { done } = owner;
  const notes = acts.filter((entry) => entry.type === 'act-taken' && entry.act === 'note').length;
  const texts = notes === 0 ? [done.measuredOnly] : [done.measuredOnly, done.notes(notes)];
  return { id: 'done', title: done.title, blocks: texts.map((text) => ({ kind: 'text', text })) };
};

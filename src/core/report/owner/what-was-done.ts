// What was done to the device, as far as the session records it.
import type { Phrase } from '../../words/report-phrase.js';
import type { ReportWords } from '../../words/report-words.js';
import type { Section } from '../document.js';
import type { PinFacts } from '../pin-facts.js';
import type { Report } from '../report.js';
import { doneInWords } from './after-work.js';

export const whatWasDone = (
  report: Report,
  pins: readonly PinFacts[],
  words: ReportWords,
): Section => {
  const { done } = words.owner;
  const { acts } = report.account;
  const notes = acts.filter((entry) => entry.type === 'act-taken' && entry.act === 'note').length;
  const nothing = pins.every(({ record }) => record.verdict === 'unread');
  const work = doneInWords(report, words);
  const texts: Phrase[] =
    work.length > 0 ? [...work] : [nothing ? done.nothing : done.measuredOnly];
  if (notes > 0) texts.push(done.notes(notes));
  return { id: 'done', title: done.title, blocks: texts.map((text) => ({ kind: 'text', text })) };
};

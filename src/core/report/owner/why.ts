// Why the findings are believed, and how far: what was compared with what, what was repeated, how sure it is.

import type { MeasureFunction } from '../../reading.js';
import type { Phrase } from '../../words/report-phrase.js';
import type { ReportWords } from '../../words/report-words.js';
import type { Section } from '../document.js';
import { isFaulty, type PinFacts } from '../pin-facts.js';
import { writtenPercent } from '../written.js';

export const whyWeThinkSo = (
  pins: readonly PinFacts[],
  { owner }: ReportWords,
  measure: MeasureFunction,
): Section => {
  const { why } = owner;
  const faulty = pins.filter(({ record }) => isFaulty(record.verdict));
  const read = faulty.filter(({ record }) => !record.overload);
  const silent = faulty.filter(({ record }) => record.overload);
  const texts: Phrase[] = [why.method(measure)];
  if (read.length > 0 && read.every(({ agreeing }) => agreeing > 1)) texts.push(why.repeated);
  if (silent.length > 0 && silent.every(({ confirmed }) => confirmed)) texts.push(why.confirmed);
  if (faulty.length > 0) {
    const least = Math.min(...faulty.map(({ record }) => record.confidence));
    texts.push(why.confidence(writtenPercent(least)), why.fromHere);
  }
  return { id: 'why', title: why.title, blocks: texts.map((text) => ({ kind: 'text', text })) };
};

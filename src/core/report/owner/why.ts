// Why the findings are believed, and how far: what was compared with what, what was repeated, how sure it is.

import { join, name, type Phrase } from '../../words/report-phrase.js';
import type { ReportWords } from '../../words/report-words.js';
import type { Account } from '../account.js';
import type { Block, Section } from '../document.js';
import { isFaulty, type PinFacts } from '../pin-facts.js';
import type { Pressed } from '../press-log.js';
import { writtenPercent } from '../written.js';

export const whyWeThinkSo = (
  { opened, press }: Pick<Account, 'opened' | 'press'>,
  pins: readonly PinFacts[],
  { owner }: ReportWords,
): Section | null => {
  if (pins.every(({ record }) => record.verdict === 'unread')) return null;
  const { why } = owner;
  const faulty = pins.filter(({ record }) => isFaulty(record.verdict));
  const read = faulty.filter(({ record }) => !record.overload);
  const silent = faulty.filter(({ record }) => record.overload);
  const evidence: Phrase[] = [];
  if (read.length > 0 && read.every(({ agreeing }) => agreeing > 1)) evidence.push(why.repeated);
  if (silent.length > 0 && silent.every(({ confirmed }) => confirmed)) evidence.push(why.confirmed);
  const reach: Phrase[] = [];
  if (faulty.length > 0) {
    const least = Math.min(...faulty.map(({ record }) => record.confidence));
    evidence.push(why.confidence(writtenPercent(least)));
    reach.push(why.fromHere);
  }
  reach.push(...pressesThatAnswered(press.tests, why));
  const texts = [[why.method(opened.measure.function)], evidence, reach]
    .filter((sentences) => sentences.length > 0)
    .map((sentences): Block => ({ kind: 'text', text: join(sentences, ' ') }));
  return { id: 'why', title: why.title, blocks: texts };
};

/** More would push the rest off the first page. */
const mostPresses = 3;

const pressesThatAnswered = (
  tests: readonly Pressed[],
  why: ReportWords['owner']['why'],
): readonly Phrase[] =>
  tests
    .flatMap(({ judged: { line, part, finding }, sham }) =>
      !sham && (finding === 'loose' || finding === 'cracked' || finding === 'bridged')
        ? [why.pressed(name(line), part === null ? null : name(part), finding)]
        : [],
    )
    .slice(0, mostPresses);

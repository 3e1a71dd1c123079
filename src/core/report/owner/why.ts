// Why the findings are believed, and how far: what was compared with what, what was repeated, how sure it is.

import { join, name, type Phrase } from '../../words/report-phrase.js';
import type { AnsweringFinding, ReportWords } from '../../words/report-words.js';
import type { Account } from '../account.js';
import type { Block, Section } from '../document.js';
import { isFaulty, type PinFacts } from '../pin-facts.js';
import type { Pressed } from '../press-log.js';
import { listed, writtenPercent } from '../written.js';

export const whyWeThinkSo = (
  { opened, press }: Pick<Account, 'opened' | 'press'>,
  pins: readonly PinFacts[],
  words: ReportWords,
): Section | null => {
  if (pins.every(({ record }) => record.verdict === 'unread')) return null;
  const { why } = words.owner;
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
  reach.push(...pressesThatAnswered(press.tests, words));
  const texts = [[why.method(opened.measure.function)], evidence, reach]
    .filter((sentences) => sentences.length > 0)
    .map((sentences): Block => ({ kind: 'text', text: join(sentences, ' ') }));
  return { id: 'why', title: why.title, blocks: texts };
};

/** More would push the rest off the first page. */
const mostPresses = 3;

/** A part that answered on several lines is one finding. */
const pressesThatAnswered = (
  tests: readonly Pressed[],
  { shared, owner }: ReportWords,
): readonly Phrase[] => {
  const found = new Map<
    string,
    { part: string | null; finding: AnsweringFinding; lines: string[] }
  >();
  for (const { judged, sham } of tests) {
    const { line, part, finding } = judged;
    if (sham || (finding !== 'loose' && finding !== 'cracked' && finding !== 'bridged')) continue;
    const key = JSON.stringify([part ?? line, finding]);
    const entry = found.get(key) ?? { part, finding, lines: [] };
    if (!entry.lines.includes(line)) entry.lines.push(line);
    found.set(key, entry);
  }
  return [...found.values()]
    .slice(0, mostPresses)
    .map(({ part, finding, lines }) =>
      owner.why.pressed(
        listed(lines.map(name), shared),
        part === null ? null : name(part),
        finding,
      ),
    );
};

// What failed, pin by pin, in words for someone who knows nothing of it.
import { brief, join, name, type Phrase, say } from '../../words/report-phrase.js';
import type { PlainFault, ReportWords } from '../../words/report-words.js';
import type { Account } from '../account.js';
import type { Block, Item, Section } from '../document.js';
import { marked } from '../marked.js';
import { isFaulty, isUnclear, type PinFacts } from '../pin-facts.js';
import { goodBoard, writtenReading } from '../readings.js';
import { suspectInWords } from '../technical/suspects.js';
import { writtenPercent } from '../written.js';
import { namedPins } from './named-pins.js';

/** More would push the rest off the first page. */
const mostFaults = 4;

export const whatFailed = (
  { press, rework }: Pick<Account, 'press' | 'rework'>,
  pins: readonly PinFacts[],
  words: ReportWords,
  unit: string,
): Section => {
  const { failed } = words.owner;
  const faulty = pins.filter(({ record }) => isFaulty(record.verdict));
  const unclear = namedPins(pins, words.shared, ({ record }) => isUnclear(record.verdict));
  const blocks: Block[] = [];
  if (faulty.length > 0) {
    const items = faulty.slice(0, mostFaults).map((pin) => itemOf(pin, words, unit));
    blocks.push({ kind: 'list', items });
    const left = faulty.length - items.length;
    if (left > 0) blocks.push({ kind: 'text', text: failed.more(left) });
  }
  if (unclear !== null) blocks.push({ kind: 'text', text: failed.unclear(unclear) });
  if (pins.every(({ record }) => record.verdict === 'unread')) {
    blocks.push({ kind: 'text', text: failed.nothingMeasured });
  } else if (blocks.length === 0) blocks.push({ kind: 'text', text: failed.none });
  const said = [...likeliest(press.ranked, faulty, words)];
  const cause = rework.closed?.cause;
  if (cause !== undefined) said.push(words.shared.later.owner.cause(brief(cause)));
  if (said.length > 0) blocks.push({ kind: 'text', text: join(said, ' ') });
  return { id: 'failed', title: failed.title, blocks };
};

/** An owner is told of one place, and only if it is likelier than all others together; what it leaves open is said. */
const likeliest = (
  ranked: Account['press']['ranked'],
  faulty: readonly PinFacts[],
  { shared, owner: { failed } }: ReportWords,
): readonly Phrase[] => {
  const [first] = ranked?.suspects ?? [];
  if (first === undefined || first.probability <= 0.5) return [];
  const probability = writtenPercent(first.probability);
  const { where, id, lines } = first;
  if (where === 'lead') return [failed.likelyLead(suspectInWords(first, shared), probability)];
  const place = shared.place(where, name(id));
  const explained = namedPins(faulty, shared, ({ planned }) => lines.includes(planned.line));
  const rest = namedPins(faulty, shared, ({ planned }) => !lines.includes(planned.line));
  if (rest === null || explained === null) return [failed.likely(place, probability, null)];
  return [failed.likely(place, probability, explained), failed.unplaced(rest)];
};

const itemOf = (pin: PinFacts, { shared, owner }: ReportWords, unit: string): Item => {
  const { planned, record } = pin;
  const good = record.expected === null ? null : goodBoard(record.expected, unit, shared);
  const read = record.overload ? owner.failed.readNothing : writtenReading(record, unit, shared);
  return {
    verdict: marked(record.verdict, shared),
    text: owner.failed.fault(name(planned.pin), lineInWords(pin), faultOf(pin)),
    small: owner.failed.read(read, good),
  };
};

const lineInWords = ({ planned, line }: PinFacts): Phrase =>
  line?.title === undefined
    ? say`${name(planned.line)}`
    : say`${name(planned.line)} (${brief(line.title)})`;

const faultOf = ({ record }: PinFacts): PlainFault => {
  const { verdict, expected } = record;
  if (expected === 'overload' && verdict !== 'open') return 'unexpected';
  if (verdict === 'open') return expected === null ? 'open-unknown' : 'open';
  return verdict === 'short' || verdict === 'high' ? verdict : 'low';
};

// Holds a program's events against the truth of one walk. A capture belongs to the pin that was touched when
// it was taken, whatever it reads, so that lines that read alike are told apart. Counting ends at the first
// departure from alignment: what follows in that walk is its echo.
import { resolutionAt } from './draw-meter.js';
import {
  isJudged,
  isSettled,
  type Judged,
  type ScoredEvent,
  type Settled,
} from './scored-event.js';
import type { Contact, GeneratedWalk } from './walk-truth.js';

export const faults = [
  'wrong-capture',
  'ran-ahead',
  'held-back',
  'took-neighbour',
  'missed',
  'passed-by',
  'wrong-verdict',
  'unsure',
] as const;
export type Fault = (typeof faults)[number];

/** Faults that put a wrong name on a reading. */
export const misnames: ReadonlySet<Fault> = new Set(['ran-ahead', 'held-back', 'took-neighbour']);

export interface Finding {
  readonly fault: Fault;
  /** Place in walking order, from 0. */
  readonly index: number;
  readonly t: number;
  readonly says: string;
  /** For `ran-ahead`: this touch had already been captured for its own pin. */
  readonly twice?: true;
}

export interface WalkScore {
  readonly name: string;
  readonly rate: number;
  /** Pins up to the first departure, that one included. */
  readonly reached: number;
  readonly findings: readonly Finding[];
  readonly departure: Finding | null;
  /** Seconds from settled to captured, first capture of each pin that reads a value. */
  readonly delays: readonly number[];
  /** The same up to the last reading used, without the time the program took to put a name to it. */
  readonly readDelays: readonly number[];
}

/**
 * The moment a capture speaks of. A name may be given later than the reading was taken, so the last reading
 * used counts where the program tells it; a reading stands for the period before it, so its middle counts.
 */
const momentOf = (walk: GeneratedWalk, { overload, to, t }: Settled): number =>
  (to ?? t) - (overload === true ? 0 : 0.5 / walk.meter.rate);

/** The touch a capture was taken from: the one under way, else the last one before. */
export const contactOf = (walk: GeneratedWalk, event: Settled): Contact | undefined => {
  const moment = momentOf(walk, event);
  return walk.contacts.findLast(({ start }) => start <= moment);
};

const isWrong = (walk: GeneratedWalk, event: Settled, contact: Contact): boolean => {
  if (contact.seen === null || event.value === undefined)
    return (contact.seen === null) !== (event.value === undefined);
  const away = Math.abs(event.value - contact.seen);
  return away > 0.02 * contact.seen && away > 2 * resolutionAt(walk.meter, contact.seen);
};

interface Pin {
  readonly index: number;
  readonly settles: readonly Settled[];
  readonly judges: readonly Judged[];
}

/** Where the pin's last capture really came from, when not from this pin. */
const misplaced = (walk: GeneratedWalk, pin: Pin, all: readonly Settled[]): Finding | null => {
  const last = pin.settles.at(-1);
  if (last === undefined) return null;
  const contact = contactOf(walk, last);
  const from = contact?.index ?? -1;
  const { index } = pin;
  const finding = (fault: Fault, says: string): Finding => ({
    fault,
    index,
    t: last.to ?? last.t,
    says,
  });
  if (contact?.touch === 'neighbour')
    return finding('took-neighbour', `captured while pin ${from + 1} was touched in passing`);
  if (from === index) return null;
  if (from < index) {
    const own = walk.pins[from]?.pin;
    const twice = all.some((event) => event.pin === own && contactOf(walk, event)?.index === from);
    const says = `named ${index + 1} while pin ${from + 1} was held`;
    return { ...finding('ran-ahead', says), ...(twice ? { twice } : {}) };
  }
  const seenOwn = pin.settles.some((event) => contactOf(walk, event)?.index === index);
  return seenOwn
    ? finding('held-back', `pin ${from + 1} was taken for pin ${index + 1} touched again`)
    : finding('passed-by', `held and not captured; pin ${from + 1} was then named ${index + 1}`);
};

const lastHold = (walk: GeneratedWalk, index: number): number =>
  walk.contacts.findLast((contact) => contact.index === index && contact.touch === 'hold')?.end ??
  0;

/** What is wrong with a capture that came from the right pin. */
const misread = (walk: GeneratedWalk, pin: Pin): Finding[] => {
  const { index } = pin;
  const found: Finding[] = [];
  const last = pin.settles.at(-1);
  const contact = last && contactOf(walk, last);
  if (last === undefined || contact === undefined) return found;
  const seen = contact.seen ?? 'overload';
  if (isWrong(walk, last, contact)) {
    const says = `captured ${last.value ?? 'overload'}, settles at ${seen}`;
    found.push({ fault: 'wrong-capture', index, t: last.to ?? last.t, says });
  }
  const verdict = pin.judges.at(-1)?.verdict;
  const right = walk.pins[index]?.right ?? [];
  const says = `judged ${verdict ?? 'nothing'}, is ${right.join(' or ')} (${walk.pins[index]?.condition})`;
  if (verdict === 'unsure') found.push({ fault: 'unsure', index, t: last.to ?? last.t, says });
  else if (verdict === undefined || !right.includes(verdict))
    found.push({ fault: 'wrong-verdict', index, t: last.to ?? last.t, says });
  return found;
};

/** From settled to told, and to the last reading used, of a pin's first capture. */
const delaysOf = (
  walk: GeneratedWalk,
  { index, settles }: Pin,
): readonly [number, number] | null => {
  const first = settles[0];
  const contact = first && contactOf(walk, first);
  if (first?.value === undefined || contact?.index !== index || contact.settledAt === null)
    return null;
  return [first.t - contact.settledAt, (first.to ?? first.t) - contact.settledAt];
};

export const scoreWalk = (walk: GeneratedWalk, events: readonly ScoredEvent[]): WalkScore => {
  const settles = events.filter(isSettled);
  const judges = events.filter(isJudged);
  const findings: Finding[] = [];
  const delays: (readonly [told: number, read: number])[] = [];
  const end = (reached: number, departure: Finding | null): WalkScore => ({
    name: walk.name,
    rate: walk.meter.rate,
    reached,
    findings,
    departure,
    delays: delays.map(([told]) => told),
    readDelays: delays.map(([, read]) => read),
  });
  const last = walk.pins.findLastIndex(({ pin }) => settles.some((event) => event.pin === pin));
  for (const [index, { pin: name }] of walk.pins.entries()) {
    const pin: Pin = {
      index,
      settles: settles.filter(({ pin }) => pin === name),
      judges: judges.filter(({ pin }) => pin === name),
    };
    if (pin.settles.length === 0) {
      const says =
        index > last ? 'held and not captured; the walk stood still' : 'held, not captured';
      const missed: Finding = { fault: 'missed', index, t: lastHold(walk, index), says };
      findings.push(missed);
      if (index > last) return end(index + 1, missed);
      continue;
    }
    const departure = misplaced(walk, pin, settles);
    if (departure !== null) {
      findings.push(departure);
      return end(index + 1, departure);
    }
    findings.push(...misread(walk, pin));
    const found = delaysOf(walk, pin);
    if (found !== null) delays.push(found);
  }
  return end(walk.pins.length, null);
};

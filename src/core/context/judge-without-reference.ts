// What is probably off on a board of which no good values are known: judged from grounds, shorts, pins of the same
// line, mates and groups. Says of most lines only that nothing speaks against them. Two witnesses are needed to
// call a value low or high.

import type { Plan, PlannedPin } from '../profile/plan.js';
import type { Verdict } from '../verdict.js';
import { alikeWithin, coverage } from './alike.js';
import { compareMates } from './compare-mates.js';
import { type GroupPlace, groupPlaces } from './group-places.js';
import { type LineRead, linesRead } from './lines-read.js';
import { isMeasured, isOverloaded, type MeasuredPin, type ReadPin } from './read-pin.js';
import type { Witness } from './witness.js';

export interface ReferenceFree {
  readonly index: number;
  readonly pin: string;
  readonly line: string;
  readonly probably: 'good' | 'off' | 'unknown';
  /** In order of weight; empty where there is nothing to compare with. */
  readonly because: readonly Witness[];
  /** Null where nothing speaks for another verdict than the reading's own. */
  readonly verdict: Verdict | null;
  readonly confidence: number;
}

/**
 * How far a witness is to be believed: order of magnitude only. Common practice, no source. A fault that is named by
 * one of them is as sure as any other; a line called normal need not be: nothing speaks against it, and no more.
 */
const belief: Readonly<Record<Witness, number>> = {
  'ground-good': 0.98,
  'ground-bad': 0.97,
  shorted: 0.97,
  'same-line-reads-less': 0.97,
  'mate-alike': 0.9,
  'mate-differs': 0.6,
  'mate-conducts': 0.95,
  'mate-also-overload': 0.5,
  'group-alike': 0.85,
  'group-apart': 0.8,
  'group-conducts': 0.95,
  'unused-overload': 0.98,
  'unused-conducts': 0.95,
};
/** A supply may rightly read a few ohms. */
const shortedSupply = 0.7;
const twoWitnesses = 0.95;

/** Every pin that was read, in walking order. */
export const judgeWithoutReference = (
  pins: readonly ReadPin[],
  plan: Plan,
): readonly ReferenceFree[] => {
  const board = { plan, pins, lines: linesRead(plan, pins) };
  const places = groupPlaces(board.lines);
  return plan.pins.flatMap((planned): readonly ReferenceFree[] => {
    const read = pins[planned.index];
    if (!isMeasured(read) && !isOverloaded(read)) return [];
    const { index, pin, line } = planned;
    const opinion = opinionOf(planned, read as ReadPin, board, places.get(line));
    return [{ index, pin, line, ...opinion }];
  });
};

interface Board {
  readonly plan: Plan;
  readonly pins: readonly ReadPin[];
  readonly lines: ReadonlyMap<string, LineRead>;
}

type Opinion = Pick<ReferenceFree, 'probably' | 'because' | 'verdict' | 'confidence'>;

const opinionOf = (
  planned: PlannedPin,
  read: ReadPin,
  board: Board,
  place: GroupPlace | undefined,
): Opinion => {
  const { kind, shortLimit } = planned;
  if (kind === 'ground') {
    if (!isMeasured(read)) return off('ground-bad', 'open');
    return read.value <= shortLimit ? good('ground-good') : off('ground-bad', 'high');
  }
  if (kind === 'unused') {
    if (!isMeasured(read)) return good('unused-overload');
    return off('unused-conducts', read.value <= shortLimit ? 'short' : 'low');
  }
  if (!isMeasured(read)) return overloaded(planned, board, place === 'alone-silent');
  if (read.value <= shortLimit) {
    const short = off('shorted', 'short');
    return kind === 'supply' ? { ...short, verdict: 'unsure', confidence: shortedSupply } : short;
  }
  if (readsMoreThanItsLine(planned, read, board)) return off('same-line-reads-less', 'high');
  return byNeighbours(planned, read, board, place === 'alone-silent' ? undefined : place);
};

const good = (witness: Witness): Opinion => ({
  probably: 'good',
  because: [witness],
  verdict: 'normal',
  confidence: belief[witness],
});

const off = (witness: Witness, verdict: Verdict): Opinion => ({
  probably: 'off',
  because: [witness],
  verdict,
  confidence: belief[witness],
});

const unknown = (because: readonly Witness[], verdict: Verdict | null = null): Opinion => ({
  probably: 'unknown',
  because,
  verdict,
  confidence: 0.5,
});

/** An overload is an open line, or one that is coupled through a capacitor and never conducts. */
const overloaded = (planned: PlannedPin, board: Board, groupConducts: boolean): Opinion => {
  const own = board.lines.get(planned.line)?.read;
  if (isMeasured(own)) return off('same-line-reads-less', 'open');
  const mate = planned.mate === undefined ? undefined : board.lines.get(planned.mate)?.read;
  if (isMeasured(mate)) return off('mate-conducts', 'open');
  if (isOverloaded(mate)) return unknown(['mate-also-overload'], 'unsure');
  return groupConducts ? off('group-conducts', 'open') : unknown([]);
};

/** Pins of one line are joined on the board: the one that reads clearly more has a joint in its way. */
const readsMoreThanItsLine = (
  { line, index, shortLimit }: PlannedPin,
  read: MeasuredPin,
  { lines, pins }: Board,
): boolean =>
  (lines.get(line)?.pins ?? []).some((other) => {
    const otherRead = pins[other.index];
    if (other.index === index || !isMeasured(otherRead)) return false;
    const doubt =
      coverage * Math.hypot(read.standardUncertainty ?? 0, otherRead.standardUncertainty ?? 0);
    const more = read.value - otherRead.value;
    return more > Math.max(alikeWithin * otherRead.value, doubt) && otherRead.value > shortLimit;
  });

const byNeighbours = (
  planned: PlannedPin,
  read: ReadPin,
  { lines }: Board,
  standing: Exclude<GroupPlace, 'alone-silent'> | undefined,
): Opinion => {
  const mate = planned.mate === undefined ? undefined : lines.get(planned.mate);
  const pair =
    mate === undefined ? undefined : compareMates([planned, read], [mate.planned, mate.read]);
  const apart = standing?.stands === 'apart';
  const value: Verdict = (standing?.difference ?? 0) < 0 ? 'low' : 'high';
  if (pair?.finding === 'alike') {
    // Both off alike: the pair hangs on one part, and the rest of the group is the better witness.
    if (apart) return { ...off('group-apart', 'unsure'), because: ['group-apart', 'mate-alike'] };
    return good('mate-alike');
  }
  // An open or shorted mate has its own trouble and says nothing of this line.
  if (pair?.finding === 'differs' && pair.difference !== null) {
    if (apart) {
      return {
        probably: 'off',
        because: ['group-apart', 'mate-differs'],
        verdict: value,
        confidence: twoWitnesses,
      };
    }
    if (standing?.stands === 'with') return good('group-alike');
    return { ...off('mate-differs', 'unsure'), probably: 'unknown' };
  }
  if (apart) return off('group-apart', 'unsure');
  return standing?.stands === 'with' ? good('group-alike') : unknown([]);
};

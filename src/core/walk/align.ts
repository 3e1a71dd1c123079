// Which pin the probe is on. Misalignment is the worst failure there is: one wrong step misnames every later
// pin. So every way the captures so far can lie along the connector is kept with its probability (a few at a
// time are enough), and a capture is named only when nearly all of it agrees. When a later capture makes
// another way more likely, the same bookkeeping shows by how many places the walk is off.

import type { Plan, PlannedPin } from '../profile/plan.js';
import type { MeasureFunction } from '../reading.js';
import type { Gap } from './contact.js';
import { firstTouchDensity, gapLikelihood, sameLineDensity } from './likelihood.js';

/** What a pin still waits for. */
export type Stage = 'awaiting' | 'confirming' | 'done';

/** How a capture relates to its pin. */
export type Role = 'first' | 'repeat' | 'slip' | 'answer';

/** One entry of the book, newest first. */
export interface Entry {
  readonly capture: number;
  readonly index: number;
  readonly role: Role;
  readonly before: Entry | null;
}

/** One way the captures may lie along the connector. */
export interface Way {
  /** Natural logarithm, relative to the best way. */
  readonly weight: number;
  readonly index: number;
  readonly stage: Stage;
  /** What the pin at `index` read last, or null. */
  readonly value: number | null;
  readonly book: Entry | null;
}

export type Alignment = readonly Way[];

export interface CaptureEvidence {
  readonly capture: number;
  readonly value: number;
  readonly gap: Gap;
}

/** Tells whether a value at a pin would be called normal, so that nothing more is waited for. */
export type WouldBeNormal = (pin: PlannedPin, value: number) => boolean;

const mostWays = 8;
const leastWeight = Math.log(1e-9);

export const startAt = (index: number): Alignment => [
  { weight: 0, index, stage: 'awaiting', value: null, book: null },
];

/** What technicians do after a touch, before the value is looked at. Common practice, no source. */
const habits = {
  slip: 0.1,
  awaiting: { here: 0.985, ahead: 0.005 },
  confirming: { again: 0.93, next: 0.06, ahead: 0.001 },
  done: { again: 0.0003, next: 0.99, ahead: 0.003 },
  /** Added to `ahead` when a touch went by uncaptured, or the pin between shows nothing by design. */
  passedUncaptured: 0.25,
  passedUnseen: 0.2,
} as const;

export const alignCapture = (
  alignment: Alignment,
  plan: Plan,
  evidence: CaptureEvidence,
  wouldBeNormal: WouldBeNormal,
): Alignment => {
  const gap = gapLikelihood(evidence.gap);
  const next: Way[] = [];
  for (const way of alignment) {
    for (const step of stepsFrom(way, plan, evidence.gap, gap)) {
      const pin = plan.pins[step.index];
      if (pin === undefined) continue;
      const density = densityOf(step.role, way, pin, plan, evidence.value);
      const settled =
        step.role === 'slip'
          ? way.stage
          : stageAfter(step, way, pin, plan.function, evidence.value, wouldBeNormal);
      next.push({
        weight: way.weight + Math.log(step.probability) + Math.log(density),
        index: step.index,
        stage: settled,
        value: step.role === 'slip' ? way.value : evidence.value,
        book: { capture: evidence.capture, index: step.index, role: step.role, before: way.book },
      });
    }
  }
  return keepBest(next);
};

interface Step {
  readonly index: number;
  readonly role: Role;
  readonly probability: number;
}

const stepsFrom = (
  way: Way,
  plan: Plan,
  gap: Gap,
  likelihood: { slip: number; lift: number },
): readonly Step[] => {
  const { index, stage } = way;
  const brushed = gap.brushes > 0 ? habits.passedUncaptured : 0;
  const unseen = (between: number): number =>
    plan.pins[between]?.expected === 'overload' ? habits.passedUnseen : 0;
  if (stage === 'awaiting') {
    const { here, ahead } = habits.awaiting;
    return [
      { index, role: 'first', probability: here },
      { index: index + 1, role: 'first', probability: ahead + brushed + unseen(index) },
    ];
  }
  const { lift, slip } = likelihood;
  const habit = stage === 'done' ? habits.done : habits.confirming;
  return [
    // Where nothing was read there is no contact to slip from.
    { index, role: 'slip', probability: way.value === null ? 1e-9 : habits.slip * slip },
    { index, role: 'repeat', probability: habit.again * lift },
    { index: index + 1, role: 'first', probability: habit.next * lift },
    {
      index: index + 2,
      role: 'first',
      probability: (habit.ahead + (stage === 'done' ? brushed + unseen(index + 1) : 0)) * lift,
    },
  ];
};

const densityOf = (role: Role, way: Way, pin: PlannedPin, plan: Plan, value: number): number => {
  if (role === 'first') {
    const last = plan.pins[way.index];
    const mate = last !== undefined && pin.mate === last.line ? way.value : null;
    return firstTouchDensity(pin, value, plan.function, mate);
  }
  if (way.value === null) return firstTouchDensity(pin, value, plan.function, null);
  const same = sameLineDensity(way.value, value, plan.function);
  // A line touched again may read otherwise: the first contact was bad, or the joint moves.
  return role === 'slip'
    ? 0.98 * same + 0.02 * firstTouchDensity(pin, value, plan.function, null)
    : 0.85 * same + 0.15 * firstTouchDensity(pin, value, plan.function, null);
};

const stageAfter = (
  step: Step,
  way: Way,
  pin: PlannedPin,
  measure: MeasureFunction,
  value: number,
  wouldBeNormal: WouldBeNormal,
): Stage => {
  if (wouldBeNormal(pin, value)) return 'done';
  if (step.role === 'repeat' && way.stage === 'done') return 'done';
  const agrees = step.role === 'repeat' && way.value !== null && agree(way.value, value, measure);
  return agrees ? 'done' : 'confirming';
};

/** True when a repeat touch says the same as the touch before it. */
export const agree = (before: number, value: number, measure: MeasureFunction): boolean => {
  const floor = measure === 'resistance' || measure === 'continuity' ? 0.6 : 0.01;
  return Math.abs(before - value) <= Math.max(0.03 * Math.abs(before), floor);
};

const keepBest = (ways: readonly Way[]): Alignment => {
  let best = Number.NEGATIVE_INFINITY;
  for (const way of ways) best = Math.max(best, way.weight);
  return ways
    .map((way) => ({ ...way, weight: way.weight - best }))
    .filter((way) => way.weight > leastWeight)
    .sort((a, b) => b.weight - a.weight)
    .slice(0, mostWays);
};

/** Every way takes the same step, as after an act of the technician, which is not in doubt. */
export const moveAll = (alignment: Alignment, move: (way: Way) => Way): Alignment =>
  alignment.map(move);

/** Only the likeliest way goes on, from another place. */
export const placeAt = (alignment: Alignment, index: number): Alignment => [
  { weight: 0, index, stage: 'awaiting', value: null, book: alignment[0]?.book ?? null },
];

/** Only the ways that fulfil a condition go on, unless none does. */
export const keepWays = (alignment: Alignment, condition: (way: Way) => boolean): Alignment => {
  const kept = alignment.filter(condition);
  return kept.length === 0 ? alignment : keepBest(kept);
};

export interface Naming {
  readonly index: number;
  readonly role: Role;
  /** Probability of this pin for this capture, over all ways. */
  readonly probability: number;
}

/** Where a capture most probably belongs, or null when no way remembers it. */
export const nameCapture = (alignment: Alignment, capture: number): Naming | null => {
  const mass = new Map<number, { role: Role; sum: number }>();
  let total = 0;
  for (const way of alignment) {
    const entry = findEntry(way.book, capture);
    if (entry === null) continue;
    const weight = Math.exp(way.weight);
    const known = mass.get(entry.index);
    if (known === undefined) mass.set(entry.index, { role: entry.role, sum: weight });
    else known.sum += weight;
    total += weight;
  }
  let naming: Naming | null = null;
  for (const [index, { role, sum }] of mass) {
    const probability = sum / total;
    if (naming === null || probability > naming.probability) naming = { index, role, probability };
  }
  return naming;
};

const findEntry = (book: Entry | null, capture: number): Entry | null => {
  for (let entry = book; entry !== null; entry = entry.before) {
    if (entry.capture === capture) return entry;
    if (entry.capture < capture) return null;
  }
  return null;
};

// Which pin the probe is on. Misalignment is the worst failure there is: one wrong step misnames every later
// pin. So every way the captures so far can lie along the connector is kept with its probability, and a capture
// is named only when nearly all of it agrees. When a later capture makes another way more likely, the same
// bookkeeping shows by how many places the walk is off.
import type { ShiftEstimate } from '../context/estimate-shift.js';
import { beliefFor } from '../context/shift-belief.js';
import { walksDonor } from '../profile/donor.js';
import type { Plan, PlannedPin } from '../profile/plan.js';
import type { MeasureFunction } from '../reading.js';
import { type GapLikelihood, type GapView, gapLikelihood, sinceBrush } from './gap-likelihood.js';
import {
  answeredAgain,
  type CalledBack,
  comesBack,
  goesOver,
  type Habit,
  habitInTurns,
  inTurnsDensity,
  ledAfter,
  returnDensity,
  seenBefore,
} from './in-turns.js';
import { firstTouchDensity, nextOfLine, sameLineDensity } from './likelihood.js';
import { type Alignment, keepBest, type Role, type Stage, type Way } from './ways.js';

export interface CaptureEvidence {
  readonly capture: number;
  readonly value: number;
  /** Standard deviation of the value from its touch alone. */
  readonly deviation: number;
  readonly view: GapView;
  /** The walk did not know where it stood, and had said so. */
  readonly doubted: boolean;
  /** The place that the technician was called back to, and what it is known to read. */
  readonly called: CalledBack | null;
  /** What a pin is known to read, by its place. */
  readonly read: (index: number) => number | null;
  readonly beliefs: ShiftEstimate['beliefs'];
}

/** Probability that the captured value is normal at a pin, 0 where it would not be called so: more is waited for then. */
export type Normality = (pin: PlannedPin) => number;

/** What technicians do after a touch, before the value is looked at. Common practice, no source. */
const habits = {
  slip: 0.1,
  awaiting: { here: 0.985, ahead: 0.001 },
  confirming: { again: 0.93, next: 0.06, ahead: 0.0003 },
  done: { again: 0.0003, next: 0.99, ahead: 0.0005 },
  /** Asked whether the last touch was the same pin or the next, people go on, or touch that one again. */
  asked: { again: 0.02, next: 0.97, ahead: 0.0005 },
  /** A normal value near its limit makes people touch again: this times the probability that it is not. */
  doubted: 0.3,
  /** Added to `ahead` when the pin between shows nothing by design. */
  passedUnseen: 0.01,
} as const;

/**
 * Probability that a touch which came to nothing was all that its pin got, by its seconds, and by whether it was left
 * for as long as a lift takes.
 */
const passedBy = (view: GapView): number => {
  const { brush } = view.gap;
  if (brush === null || brush.spanS < 0.4) return 0;
  const { slip, lift } = gapLikelihood(sinceBrush(view, brush));
  const { spanS } = brush;
  return ((spanS < 0.9 ? 0.01 : spanS < 1.8 ? 0.1 : 0.3) * lift) / (slip + lift);
};

export const alignCapture = (
  alignment: Alignment,
  plan: Plan,
  evidence: CaptureEvidence,
  normality: Normality,
): Alignment => {
  const gap = gapLikelihood(evidence.view);
  const candidates: Candidate[] = [];
  for (const way of alignment) {
    for (const step of stepsFrom(way, plan, evidence, gap)) {
      const pin = plan.pins[step.index];
      if (pin === undefined || step.probability === 0) continue;
      const density = densityOf(step.role, way, pin, plan, evidence);
      candidates.push({
        way,
        step,
        pin,
        weight: way.weight + Math.log(step.probability * density),
      });
    }
  }
  return keepBest(candidates).map((candidate) => arrive(candidate, plan, evidence, normality));
};

interface Candidate {
  readonly way: Way;
  readonly step: Step;
  readonly pin: PlannedPin;
  readonly weight: number;
}

const arrive = (
  { way, step, pin, weight }: Candidate,
  plan: Plan,
  { capture, value, deviation, called }: CaptureEvidence,
  normality: Normality,
): Way => {
  const { index, role } = step;
  const normal = normality(pin);
  return {
    weight,
    index,
    stage: stageAfter(role, way, pin, plan.function, value, normal),
    doubt: normal > 0 ? 1 - normal : 0,
    value,
    deviation,
    led: ledAfter(role, way, called),
    book: { capture, index, role, before: way.book },
  };
};

interface Step {
  readonly index: number;
  readonly role: Role;
  readonly probability: number;
}

const stepsFrom = (
  way: Way,
  plan: Plan,
  evidence: CaptureEvidence,
  gap: GapLikelihood,
): readonly Step[] => {
  const steps = stepsOn(way, plan, evidence, gap);
  const { called } = evidence;
  if (called === null) return steps;
  const share = comesBack(called);
  return [
    { index: called.index, role: 'return', probability: share * gap.lift },
    // The probe may slip before the call is heard.
    ...steps.map((step) =>
      step.role === 'slip' ? step : { ...step, probability: (1 - share) * step.probability },
    ),
  ];
};

const stepsOn = (
  way: Way,
  plan: Plan,
  { view, doubted }: CaptureEvidence,
  { slip, lift }: GapLikelihood,
): readonly Step[] => {
  const { index, stage } = way;
  const passed = passedBy(view);
  const inTurns = walksDonor(plan);
  const over = inTurns ? goesOver(view) : 1;
  const unseen = (between: number): number =>
    plan.pins[between]?.expected === 'overload' ? habits.passedUnseen : 0;
  if (stage === 'awaiting') {
    const { here, ahead } = habits.awaiting;
    return [
      { index, role: 'first', probability: here },
      { index: index + 1, role: 'first', probability: ahead + passed + unseen(index) },
    ];
  }
  const habit = habitAfter(way, plan, doubted);
  const again =
    (stage === 'done' ? habit.again + habits.doubted * way.doubt : habit.again) *
    (inTurns && way.value === null ? answeredAgain : 1);
  // Only from a contact can the probe slip: an answer was given in the air.
  const slips = way.value === null ? 0 : habits.slip * slip;
  return [
    { index, role: 'slip', probability: slips },
    { index, role: 'repeat', probability: again * lift },
    { index: index + 1, role: 'first', probability: habit.next * lift * over },
    {
      index: index + 2,
      role: 'first',
      probability: (habit.ahead + (stage === 'done' ? passed + unseen(index + 1) : 0)) * lift,
    },
  ];
};

const habitAfter = (way: Way, plan: Plan, doubted: boolean): Habit => {
  if (way.stage !== 'done') return habits.confirming;
  const usual = doubted ? habits.asked : habits.done;
  return walksDonor(plan) ? habitInTurns(way, plan, usual) : usual;
};

/**
 * Share of slips and repeats after which a line reads otherwise: a bad contact before, or a joint that moves. Where the
 * probe was not seen to leave at all, a reading that went on creeping after its capture looks like a slip.
 */
const otherwise = { slip: 0.004, creptOn: 0.1, repeat: 0.15 } as const;

const densityOf = (
  role: Role,
  way: Way,
  pin: PlannedPin,
  plan: Plan,
  evidence: CaptureEvidence,
): number => {
  const { value, deviation, beliefs, view } = evidence;
  const { function: measure } = plan;
  const shift = beliefFor(pin, beliefs, measure);
  const arrives = role === 'first' || role === 'answer';
  if (arrives && !walksDonor(plan)) {
    const last = plan.pins[way.index];
    const mate = last !== undefined && pin.mate === last.line ? way.value : null;
    const first = firstTouchDensity(pin, value, { measure, mate, before: way.value, shift });
    if (way.value === null || last?.line !== pin.line || pin.kind === 'ground') return first;
    return nextOfLine(way.value, value, first, measure);
  }
  const elsewhere = firstTouchDensity(pin, value, { measure, mate: null, shift });
  if (arrives) return inTurnsDensity(way, pin, plan, evidence, elsewhere);
  if (role === 'return') return returnDensity(evidence, elsewhere, measure);
  if (way.value === null) return elsewhere;
  // Where the probe was seen to leave a level, that level is better known than the capture it began with.
  const { gap } = view;
  const before = gap.level ?? way.value;
  const own = Math.hypot(deviation, way.deviation);
  const creptOn = role === 'slip' && gap.offS === 0 && gap.departing === 0 && gap.blankS === 0;
  const share = otherwise[creptOn ? 'creptOn' : role];
  return (1 - share) * sameLineDensity(before, value, own, measure) + share * elsewhere;
};

const stageAfter = (
  role: Role,
  way: Way,
  pin: PlannedPin,
  measure: MeasureFunction,
  value: number,
  normal: number,
): Stage => {
  if (role === 'return') return 'done';
  const agrees = way.value !== null && agree(way.value, value, measure);
  if (role === 'slip' && agrees) return way.stage;
  if (normal > 0) return 'done';
  // Both boards were touched twice by now.
  const before = seenBefore(way, pin);
  if (role === 'first' && before !== null && agree(before, value, measure)) return 'done';
  return role === 'repeat' && (agrees || way.stage === 'done') ? 'done' : 'confirming';
};

/** True when a repeat touch says the same as the touch before it. */
export const agree = (before: number, value: number, measure: MeasureFunction): boolean => {
  const floor = measure === 'resistance' || measure === 'continuity' ? 0.6 : 0.01;
  return Math.abs(before - value) <= Math.max(0.03 * Math.abs(before), floor);
};

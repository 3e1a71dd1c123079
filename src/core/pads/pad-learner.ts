// Learns the real pads: each is touched once, in the order in which they are asked for. A touch counts once its reading
// has stood still; then the probe is lifted before the next. A pure fold over readings.

import { inferResolution } from '../measure/accuracy-row.js';
import { median } from '../numbers/median.js';
import type { Plan } from '../profile/plan.js';
import { isOverload, isValue, type MeasureFunction, type Reading } from '../reading.js';
import type { AccuracyStatement } from '../session-events.js';
import { type LearnedTouch, learnPads } from './learn-pads.js';
import type { Pad, PadCommand } from './pad.js';
import { touchUncertainty } from './touch-uncertainty.js';

export interface LearnerSetup {
  readonly commands: readonly PadCommand[];
  readonly function: MeasureFunction;
  readonly accuracy: AccuracyStatement;
  /** The walk they are for, or null. */
  readonly plan: Plan | null;
}

export interface PadLearner extends LearnerSetup {
  readonly learned: readonly LearnedTouch[];
  /** The readings of the present touch. */
  readonly touch: readonly { readonly t: number; readonly value: number }[];
  /** The present touch was taken in: the probe is lifted first. */
  readonly lifting: boolean;
  readonly airFrom: number | null;
}

export type PadLesson =
  /** Touch this one now. */
  | { readonly lesson: 'wanted'; readonly command: PadCommand }
  | { readonly lesson: 'learned'; readonly pad: Pad }
  /** Not this, and why; the same one is asked for again. */
  | { readonly lesson: 'refused'; readonly command: PadCommand; readonly what: string }
  | { readonly lesson: 'done'; readonly pads: readonly Pad[] };

/** A touch stands still over the last half second, shown by so many readings. Common practice, no source. */
const stillS = 0.5;
const leastReadings = 3;
const stillWithin = 0.004;
/** The probe is off when it has read nothing for so long, seconds. */
const liftedS = 0.3;

export const beginLearning = (
  setup: LearnerSetup,
): { readonly learner: PadLearner; readonly lessons: readonly PadLesson[] } => ({
  learner: { ...setup, learned: [], touch: [], lifting: false, airFrom: null },
  lessons: wantedNext(setup.commands, 0),
});

export const learnFrom = (
  learner: PadLearner,
  reading: Reading,
): { readonly learner: PadLearner; readonly lessons: readonly PadLesson[] } => {
  if (isOverload(reading)) return inTheAir(learner, reading.t);
  if (!isValue(reading) || reading.function !== learner.function) return { learner, lessons: [] };
  const { t, value } = reading;
  if (learner.lifting) return { learner: { ...learner, airFrom: null }, lessons: [] };
  const touch = [...learner.touch, { t, value }];
  const still = stillValue(touch, t, resolutionOf(learner, reading.resolution, value));
  const held = { ...learner, touch, airFrom: null };
  return still === null
    ? { learner: held, lessons: [] }
    : taken(held, still, resolutionOf(learner, reading.resolution, still));
};

const resolutionOf = (
  { accuracy, function: measure }: PadLearner,
  told: number | undefined,
  value: number,
): number => told ?? inferResolution(accuracy, measure, value, undefined);

/** The value of a touch that has stood still until now, or null. */
const stillValue = (touch: PadLearner['touch'], t: number, resolution: number): number | null => {
  const first = touch[0];
  const last = touch.filter((one) => one.t >= t - stillS).map(({ value }) => value);
  if (first === undefined || t - first.t < stillS || last.length < leastReadings) return null;
  const middle = median(last);
  const spread = Math.max(...last) - Math.min(...last);
  return spread <= Math.max(stillWithin * Math.abs(middle), 3 * resolution) ? middle : null;
};

const taken = (
  learner: PadLearner,
  value: number,
  resolution: number,
): ReturnType<typeof learnFrom> => {
  const command = learner.commands[learner.learned.length];
  if (command === undefined) return { learner, lessons: [] };
  const standardUncertainty = touchUncertainty(value, resolution, learner.function);
  const touch: LearnedTouch = { command, value, standardUncertainty };
  const { problems } = learnPads([...learner.learned, touch], learner.plan);
  const problem = problems.find((one) => one.command === command);
  const lifting = { ...learner, touch: [], lifting: true };
  if (problem !== undefined) {
    return { learner: lifting, lessons: [{ lesson: 'refused', command, what: problem.what }] };
  }
  return {
    learner: { ...lifting, learned: [...learner.learned, touch] },
    lessons: [{ lesson: 'learned', pad: { command, value, standardUncertainty } }],
  };
};

const inTheAir = (learner: PadLearner, t: number): ReturnType<typeof learnFrom> => {
  const airFrom = learner.airFrom ?? t;
  const off = { ...learner, touch: [], airFrom };
  if (!learner.lifting || t - airFrom < liftedS) return { learner: off, lessons: [] };
  const { commands, learned, plan } = learner;
  const lessons: readonly PadLesson[] =
    learned.length < commands.length
      ? wantedNext(commands, learned.length)
      : [{ lesson: 'done', pads: learnPads(learned, plan).pads }];
  return { learner: { ...off, lifting: false }, lessons };
};

const wantedNext = (commands: readonly PadCommand[], at: number): readonly PadLesson[] => {
  const command = commands[at];
  return command === undefined ? [] : [{ lesson: 'wanted', command }];
};

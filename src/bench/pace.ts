// How the simulated technician works: every habit and clumsiness with its documented default. All times are
// seconds. Refuses probabilities outside 0 to 1 and spans that run backwards.
// The figures are common practice, no source, unless one is named.
import type { Seeded } from './seeded.js';

/** A time drawn anew each time, evenly from the first to the second. */
export type Span = readonly [number, number];

export interface Pace {
  /** From hearing a cue to acting on it. People answer a sound in about 0.2-0.5 s. */
  readonly reactionS: Span;
  /** In the air from one pin to the next. */
  readonly liftS: Span;
  /** From one board to the other, on top of that. */
  readonly overS: Span;
  /** Chance that finding the next pin under the microscope takes long, and how long. */
  readonly huntChance: number;
  readonly huntS: Span;
  /** Chance that the probe lands on the neighbour first, how long it rests there, and the step over. */
  readonly neighbourChance: number;
  readonly neighbourS: Span;
  readonly stepOverS: Span;
  /** Bounces on landing: at most so many, each open for so long. */
  readonly bounces: number;
  readonly bounceS: Span;
  /** Chance that contact is lost once while holding, when after landing, and for how long. */
  readonly slipChance: number;
  readonly slipAfterS: Span;
  readonly slipS: Span;
  /** Without a word from the program for so long, the pin is touched again. */
  readonly patienceS: number;
  /** How long a pin with no reading is held before answering that it is open, once the question stands. */
  readonly sureS: Span;
  /** One ground tap, and the gap between two. Slow meters stretch both to 2.5 readings. */
  readonly tapS: Span;
  /** Between the board and the reply pads, one touch of a pad, and the gap between two. */
  readonly padTravelS: Span;
  readonly padTapS: Span;
  readonly padGapS: Span;
  /** Chance that the probe finds the pin only after touching it once or twice in passing, and for how long. */
  readonly fumbleChance: number;
  readonly fumbleS: Span;
  /** The deaf technician holds a pin this long after its reading stands still. */
  readonly deafHoldS: Span;
  /** After so long without a reading the program asks; the deaf one answers this much later. */
  readonly questionAfterS: number;
  readonly deafMarginS: Span;
}

export const usualPace: Pace = {
  reactionS: [0.2, 0.5],
  liftS: [0.5, 0.9],
  overS: [0.3, 1],
  huntChance: 0.04,
  huntS: [1, 6],
  neighbourChance: 0.06,
  neighbourS: [0.05, 0.3],
  stepOverS: [0.03, 0.12],
  bounces: 3,
  bounceS: [0.002, 0.015],
  slipChance: 0.12,
  slipAfterS: [0.2, 1.2],
  slipS: [0.05, 0.4],
  patienceS: 12,
  sureS: [0.6, 1],
  tapS: [0.4, 0.7],
  padTravelS: [0.8, 1.2],
  padTapS: [0.45, 0.7],
  padGapS: [0.3, 0.5],
  fumbleChance: 0,
  fumbleS: [0.1, 0.9],
  deafHoldS: [1.2, 1.8],
  questionAfterS: 2.5,
  deafMarginS: [0.5, 0.9],
};

/** A calm hand that a person can follow: about two seconds a pin, with few mishaps. */
export const easyPace: Pace = {
  ...usualPace,
  reactionS: [0.4, 0.6],
  liftS: [0.7, 1],
  huntChance: 0.02,
  huntS: [1, 2],
  neighbourChance: 0.02,
  slipChance: 0.04,
};

/** A hand that never slips, bounces, hunts or lands beside. */
export const steadyPace: Pace = {
  ...usualPace,
  huntChance: 0,
  neighbourChance: 0,
  bounces: 0,
  slipChance: 0,
};

/** Nobody is over the next pin any faster; what is shorter is a slip. */
const quickestLiftS = 0.5;

/** Hands that go about `speed` times as fast; slips, bounces and the program's own times stay as they are. */
export const atSpeed = (pace: Pace, speed: number): Pace => {
  const hurried = ([low, high]: Span): Span => [low / speed, high / speed];
  const lifted = (seconds: number): number =>
    Math.max(seconds / speed, Math.min(seconds, quickestLiftS));
  return {
    ...pace,
    reactionS: hurried(pace.reactionS),
    liftS: [lifted(pace.liftS[0]), lifted(pace.liftS[1])],
    huntS: hurried(pace.huntS),
    sureS: hurried(pace.sureS),
    deafHoldS: hurried(pace.deafHoldS),
  };
};

const chances = ['huntChance', 'neighbourChance', 'slipChance', 'fumbleChance'] as const;

/** @throws RangeError naming the habit that cannot be. */
export const checkPace = (pace: Pace): void => {
  for (const name of chances)
    if (!(pace[name] >= 0 && pace[name] <= 1))
      throw new RangeError(`${name} must be from 0 to 1, not ${pace[name]}`);
  for (const [name, value] of Object.entries(pace) as [string, number | Span][])
    if (typeof value !== 'number' && !(value[0] >= 0 && value[1] >= value[0]))
      throw new RangeError(`${name} must be two rising times, not ${value.join(', ')}`);
};

export const draw = (random: Seeded, [low, high]: Span): number => random.between(low, high);

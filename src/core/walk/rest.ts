// The probe rests on what was captured. Watches on: a line that goes on creeping after its capture is seen here,
// and so is a display that no longer changes. One flat object, for most readings of a session are taken at rest.
import type { Odd, Scale } from './touch.js';

export interface Rest {
  /** The capture it rests on, or null where nothing was captured. */
  readonly of: number | null;
  /** As captured. */
  readonly captured: number;
  /** As it reads by now: a mean over the latest readings, of which there were so many. */
  readonly level: number;
  readonly n: number;
  readonly lastT: number;
  /** The latest reading, and how many in a row were equal to it to the last digit: a held display shows here. */
  readonly value: number;
  readonly equal: number;
  /** One reading elsewhere: a glitch, a slip shorter than a reading, or the beginning of a lift. */
  readonly odd: Odd | null;
  /** The present stretch of watching: its beginning, and number and sum of readings in its two halves. */
  readonly from: number;
  readonly earlyN: number;
  readonly earlySum: number;
  readonly lateN: number;
  readonly lateSum: number;
}

/** A stretch is watched for so long, with this many readings at least in each half. */
const watchS = 0.6;
const watchReadings = 2;
/** A captured level counts as so many readings, and readings longer ago than so many count no more. */
const weightOfCapture = 4;
const slowest = 12;

export const beginRest = (of: number | null, level: number, t: number, value: number): Rest => ({
  of,
  captured: level,
  level,
  n: weightOfCapture,
  lastT: t,
  value,
  equal: 1,
  odd: null,
  from: t,
  earlyN: 0,
  earlySum: 0,
  lateN: 0,
  lateSum: 0,
});

/** Two readings this near (fraction) may well be the same thing read twice, however quiet the meter. */
const nearness = 0.025;

export const surelyAlike = (a: number, b: number): boolean =>
  Math.abs(a - b) <= nearness * Math.abs(b);

/** The same, for a meter that scatters so much and a difference that means so little. */
export const alike = (a: number, b: number, scale: Scale): boolean =>
  surelyAlike(a, b) || Math.abs(a - b) <= Math.max(5 * scale.noise, scale.floor);

/** One more reading of the same. */
export const restOnce = (rest: Rest, t: number, value: number): Rest => {
  const done = isWatched(rest);
  const from = done ? rest.lastT : rest.from;
  const earlyN = done ? 0 : rest.earlyN;
  const earlySum = done ? 0 : rest.earlySum;
  const late = t - from > watchS / 2 && earlyN >= watchReadings;
  return {
    of: rest.of,
    captured: rest.captured,
    level: rest.level + (value - rest.level) / Math.min(slowest, rest.n + 1),
    n: rest.n + 1,
    lastT: t,
    value,
    equal: value === rest.value ? rest.equal + 1 : 1,
    odd: null,
    from,
    earlyN: late ? earlyN : earlyN + 1,
    earlySum: late ? earlySum : earlySum + value,
    lateN: late ? rest.lateN + 1 : 0,
    lateSum: late ? rest.lateSum + value : 0,
  };
};

/** True once a stretch is complete, with the reading that completed it. */
export const isWatched = ({ lateN, lastT, from }: Rest): boolean =>
  lateN >= watchReadings && lastT - from >= watchS;

export interface Watched {
  readonly mean: number;
  readonly n: number;
  /** Change over the stretch, from the means of its halves. */
  readonly change: number;
}

/** What a complete stretch says, or null before that. */
export const watched = (rest: Rest): Watched | null => {
  if (!isWatched(rest)) return null;
  const { earlyN, earlySum, lateN, lateSum } = rest;
  const n = earlyN + lateN;
  return {
    n,
    mean: (earlySum + lateSum) / n,
    change: 2 * (lateSum / lateN - earlySum / earlyN),
  };
};

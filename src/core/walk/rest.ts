// The probe rests on what was captured. Watches on: a line that goes on creeping after its capture is seen here,
// and so is a display that no longer changes.
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
  readonly watch: Watch;
}

/** Sums over one stretch of rest, values relative to the captured level, times to the stretch's beginning. */
export interface Watch {
  readonly from: number;
  readonly to: number;
  readonly n: number;
  readonly v: number;
  readonly t: number;
  readonly tt: number;
  readonly tv: number;
  readonly vv: number;
}

/** A stretch has this many readings at least, over this many seconds. */
const watchReadings = 4;
const watchS = 0.6;

export const beginRest = (of: number | null, level: number, t: number, value: number): Rest => ({
  of,
  captured: level,
  level,
  n: weightOfCapture,
  lastT: t,
  value,
  equal: 1,
  odd: null,
  watch: noWatch(t),
});

/** A captured level counts as so many readings, and readings longer ago than so many count no more. */
const weightOfCapture = 4;
const slowest = 12;

const noWatch = (t: number): Watch => ({ from: t, to: t, n: 0, v: 0, t: 0, tt: 0, tv: 0, vv: 0 });

/** True when two readings may well be the same thing read twice. */
export const alike = (a: number, b: number, scale: Scale): boolean =>
  Math.abs(a - b) <= Math.max(0.025 * Math.abs(b), 5 * scale.noise, scale.floor);

/** One more reading of the same. */
export const restOnce = (rest: Rest, t: number, value: number): Rest => {
  const watch = isWatched(rest.watch) ? noWatch(rest.lastT) : rest.watch;
  const dt = t - watch.from;
  const dv = value - rest.captured;
  return {
    of: rest.of,
    captured: rest.captured,
    level: rest.level + (value - rest.level) / Math.min(slowest, rest.n + 1),
    n: rest.n + 1,
    lastT: t,
    value,
    equal: value === rest.value ? rest.equal + 1 : 1,
    odd: null,
    watch: {
      from: watch.from,
      to: t,
      n: watch.n + 1,
      v: watch.v + dv,
      t: watch.t + dt,
      tt: watch.tt + dt * dt,
      tv: watch.tv + dt * dv,
      vv: watch.vv + dv * dv,
    },
  };
};

/** True once a stretch is complete, with the reading that completed it. */
export const isWatched = ({ n, from, to }: Watch): boolean =>
  n >= watchReadings && to - from >= watchS;

export interface Watched {
  readonly mean: number;
  /** Change over the stretch by the straight line through it. */
  readonly change: number;
  /** Sum of squared residuals about that line. */
  readonly squares: number;
}

/** What a complete stretch says, or null before that. */
export const watched = ({ watch, captured }: Rest): Watched | null => {
  if (!isWatched(watch)) return null;
  const { n, v, t, tt, tv, vv } = watch;
  const slope = (n * tv - t * v) / (n * tt - t * t);
  const squares = Math.max(0, vv - (v * v) / n - (slope * (n * tv - t * v)) / n);
  return { mean: captured + v / n, change: slope * (watch.to - watch.from), squares };
};

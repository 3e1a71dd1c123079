// Unbroken stretches of readings on one side, with bounces smoothed away. A stretch is only ever swallowed by
// equal neighbours on both sides, so that nothing shifts an edge.
import type { Seen, Side } from './sides.js';

export interface Run {
  readonly side: Side;
  /** Times of the first and last reading. */
  readonly from: number;
  readonly to: number;
  /** Readings on the run's own side, in order. */
  readonly own: readonly Seen[];
  /** All readings, swallowed bounces included. */
  readonly readings: number;
}

/** Contact bounce and a moment's shiver of the hand end within this. Common practice, no source. */
const bounceS = 0.12;
/** A probe that slips loses contact for 50 to 400 ms and returns to the same line. Common practice, no source. */
export const slipS = 0.45;

/**
 * Whether a run is too short to mean anything if the line was, and is again, on another side.
 * @param updateS the meter's period: a run of readings stands for one period more than they span.
 */
export const isPassing = (run: Run, updateS: number): boolean => {
  const lengthS = run.to - run.from + updateS;
  return run.readings === 1 || lengthS <= (run.side === 'above' ? slipS : bounceS);
};

export const runsOf = (seen: readonly Seen[]): Run[] => {
  const runs: { side: Side; own: Seen[] }[] = [];
  for (const one of seen) {
    const last = runs.at(-1);
    if (last?.side === one.side) last.own.push(one);
    else runs.push({ side: one.side, own: [one] });
  }
  return runs.map(({ side, own }) => ({
    side,
    own,
    from: own[0]?.t ?? 0,
    to: own.at(-1)?.t ?? 0,
    readings: own.length,
  }));
};

/** Swallows, shortest first, every passing run between two equal ones: bounces, slips, stray touches. */
export const withoutBounces = (runs: readonly Run[], updateS: number): readonly Run[] => {
  let place = -1;
  let shortest = Number.POSITIVE_INFINITY;
  for (let i = 1; i + 1 < runs.length; i += 1) {
    const run = runs[i] as Run;
    const lengthS = run.to - run.from;
    const isBetween = runs[i - 1]?.side === runs[i + 1]?.side;
    if (isBetween && lengthS < shortest && isPassing(run, updateS)) {
      place = i;
      shortest = lengthS;
    }
  }
  if (place < 0) return runs;
  const [left, bounce, right] = runs.slice(place - 1, place + 2) as [Run, Run, Run];
  const joined: Run = {
    side: left.side,
    from: left.from,
    to: right.to,
    own: [...left.own, ...right.own],
    readings: left.readings + bounce.readings + right.readings,
  };
  return withoutBounces([...runs.slice(0, place - 1), joined, ...runs.slice(place + 2)], updateS);
};

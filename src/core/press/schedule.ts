// The plan of a paced test: when to press and when to release. Core has no chance of its own, so the jitter
// comes in as numbers; the same numbers give the same plan. Refuses numbers that are too few or no fractions.
import type { CueName } from '../inputs.js';
import type { Pace } from './pace.js';
import { mostCycles } from './press-design.js';

export interface PlannedCue {
  readonly t: number;
  readonly cue: CueName;
}

/** Fractions a plan uses: one for the lead-in, one for each cycle and one for each window. */
export const drawsNeeded = 1 + 3 * mostCycles;

/** Cycles are stratified in blocks of so many: the fewest that can decide. */
export const strata = 4;

/**
 * All cues of a test that goes the whole length; it usually stops sooner. The last one is the `release`
 * that closes the last window.
 *
 * Each window's length is uniform between its bounds; of each four cycles one has both windows in the
 * shortest quarter of their spans, one in the second, and so on, in random order (stratified sampling). So the
 * lengths of cycles differ as much as they can, and no plan is near a rhythm by bad luck.
 * @param draws independent fractions, uniform from 0 up to, not including, 1.
 * @throws RangeError for too few draws, or one outside [0, 1).
 */
export const planCues = (pace: Pace, startS: number, draws: readonly number[]): PlannedCue[] => {
  if (draws.length < drawsNeeded) {
    throw new RangeError(`a plan needs ${drawsNeeded} draws, not ${draws.length}`);
  }
  const bad = draws.find((draw) => !(draw >= 0 && draw < 1));
  if (bad !== undefined) throw new RangeError(`a draw must lie in [0, 1), not ${bad}`);
  const [lead, ...rest] = draws as [number, ...number[]];
  const quarters = shuffledQuarters(rest.slice(0, mostCycles));
  const places = rest.slice(mostCycles);
  // The lead-in is long enough to see how the line rests.
  let t = startS + pace.allowanceS + 3 * pace.tailS + lead;
  const cues: PlannedCue[] = [];
  quarters.forEach((quarter, cycle) => {
    for (const [half, cue] of (['press', 'release'] as const).entries()) {
      cues.push({ t, cue });
      const { shortestS, longestS } = pace[cue];
      const fraction = (quarter + (places[2 * cycle + half] as number)) / strata;
      t += shortestS + fraction * (longestS - shortestS);
    }
  });
  cues.push({ t, cue: 'release' });
  return cues;
};

/** For each key the quarter, 0 to 3, of its cycle: the rank of the key among those of its block, equal keys
 * in their order. */
const shuffledQuarters = (keys: readonly number[]): number[] =>
  keys.map((key, i) => {
    const start = i - (i % strata);
    const others = keys.slice(start, start + strata);
    return others.filter((other, j) => other < key || (other === key && start + j < i)).length;
  });

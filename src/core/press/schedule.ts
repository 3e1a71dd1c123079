// The plan of a paced test: when to press and when to release. Core has no chance of its own, so the jitter
// comes in as numbers; the same numbers give the same plan. Refuses numbers that are too few or no fractions.
import type { CueName } from '../inputs.js';
import type { Pace } from './pace.js';
import { mostCycles } from './press-design.js';

export interface PlannedCue {
  readonly t: number;
  readonly cue: CueName;
}

/** Fractions a plan uses: one for the lead-in and one for each window. */
export const drawsNeeded = 1 + 2 * mostCycles;

/**
 * All cues of a test that goes the whole length; it usually stops sooner. The last one is the `release`
 * that closes the last window.
 * @param draws fractions from 0 up to, not including, 1, independent and uniform for the stated false-alarm rate.
 * @throws RangeError for too few draws, or one outside [0, 1).
 */
export const planCues = (pace: Pace, startS: number, draws: readonly number[]): PlannedCue[] => {
  if (draws.length < drawsNeeded) {
    throw new RangeError(`a plan needs ${drawsNeeded} draws, not ${draws.length}`);
  }
  const bad = draws.find((draw) => !(draw >= 0 && draw < 1));
  if (bad !== undefined) throw new RangeError(`a draw must lie in [0, 1), not ${bad}`);
  const draw = (place: number): number => draws[place] as number;
  // The lead-in is long enough to see how the line rests.
  let t = startS + pace.allowanceS + 3 * pace.tailS + draw(0);
  const cues: PlannedCue[] = [];
  for (let window = 0; window < 2 * mostCycles; window += 1) {
    const cue = window % 2 === 0 ? 'press' : 'release';
    cues.push({ t, cue });
    const { shortestS, longestS } = pace[cue];
    t += shortestS + draw(1 + window) * (longestS - shortestS);
  }
  cues.push({ t, cue: 'release' });
  return cues;
};

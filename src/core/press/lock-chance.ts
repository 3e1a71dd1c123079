// How often the edges of a trace that knows nothing of the cues fall into the answer zones all the same.
import type { CuePace, Pace } from './pace.js';
import { strata } from './schedule.js';

/**
 * Chance that both edges of a cycle which shows the pattern lie in their zones by accident. Between the end
 * of one window and the steady end of the next there is a gap as long as the window less its steady end; if
 * the edge lies anywhere in it alike (as edges of a Poisson process do, given their number), it falls into a
 * zone from `earliestS` to `latestS` with the chance zone / gap. Both lengths are uniform over the same
 * quarter of their spans, and the mean of 1 / gap over a uniform gap is an integral of 1/x.
 *
 * Over several cycles the product of these chances is an upper bound: quarters dealt without putting back are
 * negatively associated (Joag-Dev and Proschan 1983, from memory).
 */
export const lockChance = (pace: Pace): number => {
  let sum = 0;
  for (let quarter = 0; quarter < strata; quarter += 1) {
    sum += inZone(pace, pace.press, quarter) * inZone(pace, pace.release, quarter);
  }
  return sum / strata;
};

const inZone = (
  { earliestS, tailS }: Pace,
  { latestS, shortestS, longestS }: CuePace,
  quarter: number,
): number => {
  const widthS = (longestS - shortestS) / strata;
  const shortestGapS = shortestS - tailS + quarter * widthS;
  return ((latestS - earliestS) * Math.log1p(widthS / shortestGapS)) / widthS;
};

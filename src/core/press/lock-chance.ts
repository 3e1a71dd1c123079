// How often the edges of a trace that knows nothing of the cues fall into the answer zones all the same.
import type { CuePace, Pace } from './pace.js';

/**
 * Chance that both edges of a cycle which shows the pattern lie in their zones by accident. Between the end
 * of one window and the steady end of the next there is a gap as long as the window less its steady end; if
 * the edge lies anywhere in it alike (as edges of a Poisson process do, given their number), it falls into a
 * zone from `earliestS` to `latestS` with the chance zone / gap. The mean over a length uniform between
 * shortest and longest is the integral of 1/x.
 */
export const lockChance = (pace: Pace): number => {
  const inZone = ({ latestS, shortestS, longestS }: CuePace): number => {
    const shortestGapS = shortestS - pace.tailS;
    const longestGapS = longestS - pace.tailS;
    const meanInverse = Math.log(longestGapS / shortestGapS) / (longestGapS - shortestGapS);
    return (latestS - pace.earliestS) * meanInverse;
  };
  return inZone(pace.press) * inZone(pace.release);
};

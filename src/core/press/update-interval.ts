// How often the meter gives a new reading, from the times of the readings themselves. Readings that came in one
// burst share a time and count once.
import { median } from '../numbers/median.js';

export interface Updates {
  readonly lastT: number | null;
  /** Seconds between the latest readings, oldest first. */
  readonly gaps: readonly number[];
}

export const noUpdates: Updates = { lastT: null, gaps: [] };

/** The median settles long before this many, and follows a change of range within them. */
const mostGaps = 40;
/** Before two readings came: the slowest meter of common practice. */
const slowestS = 0.4;

export const updateSeen = ({ lastT, gaps }: Updates, t: number): Updates =>
  lastT === null || t <= lastT
    ? { lastT: lastT ?? t, gaps }
    : { lastT: t, gaps: [...gaps.slice(1 - mostGaps), t - lastT] };

export const updateSeconds = ({ gaps }: Updates): number =>
  gaps.length === 0 ? slowestS : median(gaps);

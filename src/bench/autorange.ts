// How a meter finds its range: in the air it waits on the highest; touching something, it needs a while to
// come down, and shows nothing usable until then. Keeps a range until the reading clearly leaves it.
import { type DisplayRange, rangeHolding } from './display.js';
import { draw, type Span } from './pace.js';
import type { Seeded } from './seeded.js';

export interface Ranging {
  /** What the display shows while it looks for its range. */
  readonly shows: 'overload' | 'blank';
  /** Seconds to come down from the highest range, and for one step between others. */
  readonly fromHighestS: Span;
  readonly stepS: number;
}

/** A meter that ranges quickly. Common practice, no source. */
export const usualRanging: Ranging = { shows: 'overload', fromHighestS: [0.1, 0.3], stepS: 0.1 };

export interface Autorange {
  /**
   * @param magnitude of what is touched, or null in the air.
   * @returns place of the range to show on, or null while the meter is still looking.
   */
  follow(magnitude: number | null, ranges: readonly DisplayRange[], endS: number): number | null;
  /** Starts anew, as after a change of function. */
  restart(): void;
}

/** A lower range is taken only when the reading fills no more than this much of it. */
const comfortable = 0.9;

export const createAutorange = (ranging: Ranging, random: Seeded): Autorange => {
  let place: number | null = null;
  let lookingUntilS: number | null = null;

  /** Up as far as needed, down as far as comfortable. */
  const wanted = (magnitude: number, ranges: readonly DisplayRange[], now: number): number => {
    const holding = rangeHolding(ranges, magnitude);
    return holding >= now ? holding : Math.min(now, rangeHolding(ranges, magnitude / comfortable));
  };

  return {
    restart: () => {
      place = null;
      lookingUntilS = null;
    },
    follow: (magnitude, ranges, endS) => {
      const highest = ranges.length - 1;
      place ??= highest;
      if (magnitude === null) {
        place = highest;
        lookingUntilS = null;
        return place;
      }
      const next = wanted(magnitude, ranges, place);
      if (lookingUntilS !== null) {
        if (endS < lookingUntilS) return null;
        lookingUntilS = null;
        place = next;
      }
      if (next === place) return place;
      lookingUntilS =
        endS +
        (place === highest
          ? draw(random, ranging.fromHighestS)
          : ranging.stepS * Math.abs(place - next));
      return null;
    },
  };
};

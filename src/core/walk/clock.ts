// When a reading was really taken. Links hand over several readings at once, all stamped with the moment they
// came; within such a burst they are spread out again over the time it took. Never runs ahead of the stamps.

export interface Clock {
  /** Stamp of the latest reading, or null before the first. */
  readonly stamp: number | null;
  /** Readings that share that stamp so far. */
  readonly batch: number;
  /** Smoothed time between readings, seconds. */
  readonly periodS: number;
  /** Several readings have shared one stamp: stamps tell when they came, not when they were taken. */
  readonly bursts: boolean;
  /** When the latest reading was taken, as far as can be told. */
  readonly t: number;
}

export const stoppedClock: Clock = { stamp: null, batch: 0, periodS: 0.1, bursts: false, t: 0 };

/** A silence this long is no interval between readings. */
const longestPeriodS = 2;
const smoothing = 0.2;

export const tick = (clock: Clock, stamp: number): Clock => {
  const { stamp: before, batch, periodS, bursts } = clock;
  if (before === null) return { stamp, batch: 1, periodS, bursts, t: stamp };
  if (stamp === before) {
    return {
      stamp,
      batch: batch + 1,
      periodS,
      bursts: true,
      t: Math.min(stamp, clock.t + periodS),
    };
  }
  const passed = stamp - before;
  const every = passed / batch;
  return {
    stamp,
    batch: 1,
    periodS: passed < longestPeriodS ? periodS + smoothing * (every - periodS) : periodS,
    bursts,
    t: bursts && passed < longestPeriodS ? Math.min(stamp, before + periodS) : stamp,
  };
};

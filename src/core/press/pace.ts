// How long a hand, a joint and a meter may take, and the window lengths that follow. Everything is in seconds
// from the cue. Refuses a meter without a period.

/** Sooner than this nobody answers a tone: simple reaction to sound takes 140 to 160 ms (reference works on
 * reaction time). */
const earliestS = 0.1;
/** People answer a cue in 0.2 to 0.55 s (choice reaction takes 200 to 350 ms, an encyclopaedia; the rest is travel
 * and force, for which no figure was found); a little more is allowed. */
const latestHandS = 0.7;
/** Most of the spread of one person's answers, from 0.2 to 0.55 s. Common practice, no source. */
const personS = 0.4;
/** A loose joint may stay closed a little after release. Common practice, no source. */
const latestJointS = 1;
/** Least length of a steady end of a window. */
const tailS = 0.3;
/** Window lengths vary by this much, and by three updates more, so that the edges of a trace that knows
 * nothing of the cues fall outside the answer zones often enough (see `lock-chance`). */
const jitterS = 1.6;

export interface CuePace {
  /** An answer to the cue shows in a reading at or before this. */
  readonly latestS: number;
  /** The window's length is uniform between these. */
  readonly shortestS: number;
  readonly longestS: number;
}

export interface Pace {
  /** Readings up to here never decide a window: 400 ms or three updates. */
  readonly allowanceS: number;
  /** A change that shows before this is no answer. */
  readonly earliestS: number;
  /** The answers that count lie within so much of each other: one person's spread, where the meter's
   * periods fall, and how long it ranges. */
  readonly lagBandS: number;
  /** A window's last state must have lasted so long to count. */
  readonly tailS: number;
  readonly press: CuePace;
  readonly release: CuePace;
}

/**
 * @param updateS the meter's period.
 * @param rangingS what an autoranging meter takes from overload to its first value; 0 on a fixed range.
 * @throws RangeError unless both are finite, the period positive and the ranging time not negative.
 */
export const paceFor = (updateS: number, rangingS = 0): Pace => {
  if (!(updateS > 0 && Number.isFinite(updateS))) {
    throw new RangeError(`no pace for a meter period of ${updateS} s`);
  }
  if (!(rangingS >= 0 && Number.isFinite(rangingS))) {
    throw new RangeError(`no pace for a ranging time of ${rangingS} s`);
  }
  const allowanceS = Math.max(0.4, 3 * updateS);
  // The period in which the contact changed is mixed; the one after it is the first clean one.
  const latestPressS = latestHandS + 2 * updateS + rangingS;
  const windowFor = (latestS: number): CuePace => {
    const shortestS = Math.max(latestS, allowanceS) + Math.max(tailS, 2 * updateS);
    return { latestS, shortestS, longestS: shortestS + jitterS + 3 * updateS + rangingS };
  };
  return {
    allowanceS,
    earliestS,
    lagBandS: personS + 1.5 * updateS + rangingS,
    tailS,
    press: windowFor(latestPressS),
    release: windowFor(latestPressS + latestJointS),
  };
};

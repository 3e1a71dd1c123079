// How long a meter takes to answer with a reading, learned as it goes. A measurement takes its time: what comes much
// sooner is no answer to the question just asked, and what takes much longer has probably been lost.

export interface Pace {
  readonly heard: number;
  /** Seconds, of the answers taken since the opening. */
  readonly quickest: number;
  /** Seconds, of the latest answers. */
  readonly slowest: number;
  /** Frames refused in a row for having come too soon. */
  readonly tooSoon: number;
}

export const unknownPace: Pace = {
  heard: 0,
  quickest: Number.POSITIVE_INFINITY,
  slowest: 0,
  tooSoon: 0,
};

/** One slow answer, behind others that were late, is not the meter's pace for ever. */
const remembered = 0.9;

export const withAnswer = (pace: Pace, tookS: number): Pace => ({
  heard: pace.heard + 1,
  quickest: Math.min(pace.quickest, tookS),
  slowest: Math.max(remembered * pace.slowest, tookS),
  tooSoon: 0,
});

/** Fewer say too little of the quickest. */
const leastHeard = 20;
/** A meter that is quicker does not measure first: it says what it shows, and may say it at any moment. */
const measuringS = 0.02;

/** Each refusal halves what is refused next, so that a meter set to a faster rate is soon believed. */
export const isTooSoon = ({ heard, quickest, tooSoon }: Pace, tookS: number): boolean =>
  heard >= leastHeard && quickest >= measuringS && tookS < quickest / 2 ** (1 + tooSoon);

const shortestWaitS = 1;

/** Seconds after which an answer is overdue, though it may yet come. */
export const overdueAfter = ({ slowest }: Pace): number => Math.max(shortestWaitS, 2 * slowest);

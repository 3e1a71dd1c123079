// How long this meter shows overload after contact, because it is looking for its range. Added to every lift and
// to every slip long enough to make it start over, it would pass slips off as lifts, so it is learned from lifts
// that cannot be anything else: their shortest runs of overload tell it.
import { liftDensity } from './gap-times.js';

export interface RangingDelay {
  /** Log-likelihood of each delay on the grid, the first being none at all. */
  readonly logs: readonly number[];
  /** Probability that there is a delay. */
  readonly probability: number;
  /** Its mean and standard deviation if there is one, seconds. */
  readonly meanS: number;
  readonly deviationS: number;
}

const stepS = 0.1;
const points = 33;
/** Most meters have found their range before the next reading. Common practice, no source. */
const prior = 0.12;
/**
 * Slow hands look like a slow meter. Share of technicians whose quickest lift is longer than the shortest there is by
 * none of the grid's steps, by one, by two and so on. Common practice, no source.
 */
const slowHands: readonly number[] = [0.4, 0.2, 0.15, 0.1, 0.07, 0.05, 0.03];
/** The same of the way from one board to another, which takes longer by any time up to a second and a half. */
const handsOver: readonly number[] = Array.from({ length: 16 }, () => 1 / 16);
/** Never be surer of a delay than this. */
const surest = 0.9;

export const noDelay: RangingDelay = {
  logs: Array.from({ length: points }, () => 0),
  probability: 0,
  meanS: 0,
  deviationS: 0,
};

/**
 * Learns from a lift that surely was one: its run of overload, seconds, known to within a period; `over` where it led
 * from one board to another.
 */
export const learnLift = (
  delay: RangingDelay,
  runS: number,
  periodS: number,
  over: boolean,
): RangingDelay => {
  const hands = over ? handsOver : slowHands;
  const logs = delay.logs.map(
    (log, i) => log + Math.log(liftDensity(runS - i * stepS, 0.05 + 0.3 * periodS) + 1e-4),
  );
  let best = Number.NEGATIVE_INFINITY;
  for (const log of logs) best = Math.max(best, log);
  const none =
    (1 - prior) *
    hands.reduce<number>((sum, share, i) => sum + share * Math.exp((logs[i] as number) - best), 0);
  let some = 0;
  let mean = 0;
  let square = 0;
  for (let i = 1; i < points; i += 1) {
    const weight = (prior / (points - 1)) * Math.exp((logs[i] as number) - best);
    some += weight;
    mean += weight * i * stepS;
    square += weight * (i * stepS) ** 2;
  }
  const meanS = mean / some;
  return {
    logs,
    probability: Math.min(surest, some / (some + none)),
    meanS,
    deviationS: Math.sqrt(Math.max(0, square / some - meanS * meanS)),
  };
};

// Sums walk scores into the figures the benchmark is stated in. Shares are of pins reached, so that a walk
// that left alignment early does not weigh with the pins it never named.
import { quantile } from '../shared/quantile.js';
import { misnames, type WalkScore } from './score-walk.js';

export interface Tally {
  readonly walks: number;
  readonly pins: number;
  readonly wrong: number;
  readonly misnamed: number;
  /** Part of `misnamed`: one touch was captured for two pins. */
  readonly advancedTwice: number;
  readonly missed: number;
  readonly wrongVerdict: number;
  readonly unsure: number;
  readonly outOfStep: number;
  readonly medianS: number | null;
  readonly p95S: number | null;
  /** Up to the last reading used. */
  readonly readMedianS: number | null;
  readonly readP95S: number | null;
}

export const tally = (scores: readonly WalkScore[]): Tally => {
  const findings = scores.flatMap((score) => score.findings);
  const delays = scores.flatMap((score) => score.delays);
  const count = (is: (finding: (typeof findings)[number]) => boolean): number =>
    findings.filter(is).length;
  const readDelays = scores.flatMap((score) => score.readDelays);
  const late = (sample: readonly number[], level: number): number | null =>
    sample.length === 0 ? null : quantile(sample, level);
  return {
    walks: scores.length,
    pins: scores.reduce((sum, { reached }) => sum + reached, 0),
    wrong: count(({ fault }) => fault === 'wrong-capture'),
    misnamed: count(({ fault }) => misnames.has(fault)),
    advancedTwice: count(({ twice }) => twice === true),
    missed: count(({ fault }) => fault === 'missed' || fault === 'passed-by'),
    wrongVerdict: count(({ fault }) => fault === 'wrong-verdict'),
    unsure: count(({ fault }) => fault === 'unsure'),
    outOfStep: scores.filter(({ departure }) => departure !== null).length,
    medianS: late(delays, 0.5),
    p95S: late(delays, 0.95),
    readMedianS: late(readDelays, 0.5),
    readP95S: late(readDelays, 0.95),
  };
};

/** Everything a rule can do wrong with a reading, as a share of pins. */
export const errorShare = ({ wrong, misnamed, missed, pins }: Tally): number =>
  pins === 0 ? 1 : (wrong + misnamed + missed) / pins;

export const byRate = (scores: readonly WalkScore[]): Map<number, WalkScore[]> => {
  const rates = [...new Set(scores.map(({ rate }) => rate))].sort((a, b) => a - b);
  return new Map(rates.map((rate) => [rate, scores.filter((score) => score.rate === rate)]));
};

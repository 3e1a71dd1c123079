// The verdict on one line: the probability of each class given the reading and its uncertainty, as JCGM 106
// does for conformity with limits. A verdict means "as seen from this pin": a parallel path can hide a joint.

import { conformityProbability, type Limits } from '../measure/conformity-probability.js';
import { spreadWith } from '../measure/spread.js';
import type { PlannedPin } from '../profile/plan.js';
import type { ExpectedBounds, Verdict } from '../verdict.js';

export type Observed =
  | {
      readonly value: number;
      readonly standardUncertainty: number;
      /** Half the width of the rectangle within the uncertainty; absent where all of it is normal. */
      readonly halfWidth?: number;
      /** Other limits that may hold instead, with the probability that they do. */
      readonly perhaps?: {
        readonly expected: ExpectedBounds;
        readonly standardUncertainty: number;
        readonly probability: number;
      };
    }
  | { readonly overload: true };

export interface Judgement {
  readonly verdict: Verdict;
  /** Probability that the verdict's class is the true one. */
  readonly confidence: number;
  readonly expected: ExpectedBounds;
}

/** A class must be this likely to be named; below it the verdict is `unsure` (design decision). */
export const leastConfidence = 0.95;
/** An overload is plain to see, but the probe may have missed the pin. Common practice, no source. */
const overloadConfidence = 0.99;

/** What a pin is judged by. */
export type Bounds = Pick<PlannedPin, 'expected' | 'shortLimit' | 'openLimit'>;

/** Judges what was observed at a pin against what the profile expects of its line. */
export const judge = (
  { expected, shortLimit, openLimit }: Bounds,
  observed: Observed,
): Judgement => {
  if ('overload' in observed) {
    return {
      verdict: expected === 'overload' ? 'normal' : 'open',
      confidence: overloadConfidence,
      expected,
    };
  }
  const { value, standardUncertainty, halfWidth = 0 } = observed;
  const spread = spreadWith(standardUncertainty, halfWidth);
  const within = (limits: Limits): number => conformityProbability(value, spread, limits);
  if (openLimit !== null && value >= openLimit) {
    const verdict = expected === 'overload' ? 'normal' : 'open';
    return orUnsure({ verdict, confidence: 1 - within({ high: openLimit }), expected });
  }
  const own = classes(expected, shortLimit, within);
  const { perhaps } = observed;
  if (perhaps === undefined) return orUnsure({ ...likeliest(own), expected });
  const other = spreadWith(perhaps.standardUncertainty, halfWidth);
  const instead = classes(perhaps.expected, shortLimit, (limits) =>
    conformityProbability(value, other, limits),
  );
  return orUnsure({ ...likeliest(mixed(own, instead, perhaps.probability)), expected });
};

/** The law of total probability over the limits that may hold: both name the same classes in the same order. */
const mixed = (
  own: readonly ClassProbability[],
  instead: readonly ClassProbability[],
  probability: number,
): readonly ClassProbability[] =>
  own.map(([verdict, one], at) => [
    verdict,
    (1 - probability) * one + probability * (instead[at]?.[1] ?? one),
  ]);

/** True when the observation is what a good board shows. */
export const isNormal = ({ verdict }: Pick<Judgement, 'verdict'>): boolean => verdict === 'normal';

type ClassProbability = readonly [verdict: Verdict, probability: number];

const classes = (
  expected: ExpectedBounds,
  shortLimit: number,
  within: (limits: Limits) => number,
): readonly ClassProbability[] => {
  const below = (limit: number): number => within({ high: limit });
  if (expected === 'overload') {
    return [
      ['short', below(shortLimit)],
      ['low', 1 - below(shortLimit)],
    ];
  }
  if (expected === null) {
    return [
      ['short', below(shortLimit)],
      ['normal', 1 - below(shortLimit)],
    ];
  }
  // A ground line, or any line that may read nothing at all, cannot be low.
  if (expected.low <= 0) {
    return [
      ['normal', below(expected.high)],
      ['high', 1 - below(expected.high)],
    ];
  }
  // A line that may legitimately read less than the general short limit is short only below its own band.
  const short = below(Math.min(shortLimit, expected.low));
  return [
    ['short', short],
    ['low', below(expected.low) - short],
    ['normal', within({ low: expected.low, high: expected.high })],
    ['high', 1 - below(expected.high)],
  ];
};

const likeliest = (
  probabilities: readonly ClassProbability[],
): { verdict: Verdict; confidence: number } => {
  let verdict: Verdict = 'unsure';
  let confidence = 0;
  for (const [name, probability] of probabilities) {
    if (probability > confidence) [verdict, confidence] = [name, probability];
  }
  return { verdict, confidence: Math.min(1, confidence) };
};

const orUnsure = (judgement: Judgement): Judgement =>
  judgement.confidence >= leastConfidence ? judgement : { ...judgement, verdict: 'unsure' };

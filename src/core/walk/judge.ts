// The verdict on one line: the probability of each class given the reading and its uncertainty, as JCGM 106
// does for conformity with limits. A verdict means "as seen from this pin": a parallel path can hide a joint.
import type { ExpectedBounds, nextActions, Verdict } from '../events.js';
import { normalCdf } from '../numbers/normal-cdf.js';
import type { PlannedPin } from '../profile/plan.js';

export type Observed =
  | { readonly value: number; readonly standardUncertainty: number }
  | { readonly overload: true };

export interface Judgement {
  readonly verdict: Verdict;
  /** Probability that the verdict's class is the true one. */
  readonly confidence: number;
  readonly expected: ExpectedBounds;
  readonly advice?: (typeof nextActions)[number];
}

/** A class must be this likely to be named; below it the verdict is `unsure` (design decision). */
export const leastConfidence = 0.95;
/** An overload is plain to see, but the probe may have missed the pin. Common practice, no source. */
const overloadConfidence = 0.99;

/** Judges what was observed at a pin against what the profile expects of its line. */
export const judge = (pin: PlannedPin, observed: Observed): Judgement => {
  const { expected } = pin;
  if ('overload' in observed) {
    return {
      verdict: expected === 'overload' ? 'normal' : 'open',
      confidence: overloadConfidence,
      expected,
    };
  }
  const { value, standardUncertainty: u } = observed;
  if (pin.openLimit !== null && value >= pin.openLimit) {
    const beyond = 1 - cumulative(pin.openLimit, value, u);
    return orUnsure(
      { verdict: expected === 'overload' ? 'normal' : 'open', confidence: beyond, expected },
      pin,
    );
  }
  return orUnsure({ ...likeliest(classes(pin, value, u)), expected }, pin);
};

/** True when the observation is what a good board shows. */
export const isNormal = (judgement: Judgement): boolean => judgement.verdict === 'normal';

type ClassProbability = readonly [verdict: Verdict, probability: number];

const classes = (pin: PlannedPin, value: number, u: number): readonly ClassProbability[] => {
  const below = (limit: number): number => cumulative(limit, value, u);
  const { expected, shortLimit } = pin;
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
    ['normal', below(expected.high) - below(expected.low)],
    ['high', 1 - below(expected.high)],
  ];
};

/** Φ((limit - value)/u), and a plain step where there is no uncertainty. */
const cumulative = (limit: number, value: number, u: number): number =>
  u > 0 ? normalCdf((limit - value) / u) : value <= limit ? 1 : 0;

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

const orUnsure = (judgement: Judgement, pin: PlannedPin): Judgement =>
  judgement.confidence >= leastConfidence
    ? judgement
    : {
        ...judgement,
        verdict: 'unsure',
        advice: pin.mate === undefined ? 'retake' : 'compare-mate',
      };

// How sure a verdict is, in classes that each language has a word for. The words keep to what the number says.
import type { Verdict } from '../verdict.js';
import { leastConfidence } from './judge.js';

export const certainties = ['very', 'sure', 'likely', 'unsure'] as const;
export type Certainty = (typeof certainties)[number];

const verySure = 0.99;

/** `likely`: named for want of anything against it, with less than the least confidence. */
export const certaintyOf = ({
  verdict,
  confidence,
}: {
  readonly verdict: Verdict;
  readonly confidence: number;
}): Certainty => {
  if (verdict === 'unsure') return 'unsure';
  if (confidence < leastConfidence) return 'likely';
  return confidence >= verySure ? 'very' : 'sure';
};

/** Never more sure than the figures: rounded down, and nothing is 100 %. */
export const percentOf = (probability: number): string =>
  probability > 0.999 ? '> 99.9 %' : `${Math.floor(probability * 1000 + 1e-6) / 10} %`;

// Promises counts of which a proportion can be told. Refuses no trials at all.
import { requireProbability } from './require-probability.js';

/** @throws RangeError unless 0 <= successes <= trials, both whole, trials above 0, 0 < confidence < 1. */
export function requireTrials(successes: number, trials: number, confidence: number): void {
  const whole = Number.isInteger(successes) && Number.isInteger(trials);
  if (!whole || trials < 1 || successes < 0 || successes > trials) {
    throw new RangeError(`a proportion needs whole counts, got ${successes} of ${trials}`);
  }
  requireProbability(confidence, 'the confidence');
}

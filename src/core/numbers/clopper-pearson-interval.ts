// Promises an interval for a proportion that covers it at least as often as it says, however few the trials.
// Refuses no trials at all.
import { betaQuantile } from './beta-quantile.js';
import { requireTrials } from './require-trials.js';

/**
 * Clopper and Pearson (1934), by beta quantiles: NIST/SEMATECH e-Handbook 7.2.4.2. For a one-sided limit at
 * confidence c ask for the interval at 2c - 1 and take one end.
 *
 * @throws RangeError unless 0 <= successes <= trials, both whole, trials above 0, 0 < confidence < 1.
 * @example clopperPearsonInterval(4, 20, 0.9); // { low: 0.0714, high: 0.4010 }
 */
export function clopperPearsonInterval(
  successes: number,
  trials: number,
  confidence: number,
): { low: number; high: number } {
  requireTrials(successes, trials, confidence);
  const tail = (1 - confidence) / 2;
  const failures = trials - successes;
  return {
    low: successes === 0 ? 0 : betaQuantile(tail, successes, failures + 1),
    high: failures === 0 ? 1 : betaQuantile(1 - tail, successes + 1, failures),
  };
}

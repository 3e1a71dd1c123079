// Promises an interval for a proportion that covers it about as often as it says: narrower than the exact
// one, right on average. Refuses no trials at all.
import { normalQuantile } from './normal-quantile.js';
import { requireTrials } from './require-trials.js';

/**
 * Wilson (1927): NIST/SEMATECH e-Handbook 7.2.4.1.
 *
 * @throws RangeError unless 0 <= successes <= trials, both whole, trials above 0, 0 < confidence < 1.
 * @example wilsonInterval(4, 20, 0.9); // { low: 0.0931, high: 0.3784 }
 */
export function wilsonInterval(
  successes: number,
  trials: number,
  confidence: number,
): { low: number; high: number } {
  requireTrials(successes, trials, confidence);
  const z = normalQuantile((1 + confidence) / 2);
  const share = successes / trials;
  const weight = (z * z) / trials;
  const centre = (share + weight / 2) / (1 + weight);
  const half = Math.sqrt(weight * share * (1 - share) + (weight * weight) / 4) / (1 + weight);
  return { low: Math.max(0, centre - half), high: Math.min(1, centre + half) };
}

// Promises the standard normal quantile to about 14 digits. Refuses probabilities outside (0, 1).
import { normalCdf } from './normal-cdf.js';
import { normalDensity } from './normal-density.js';
import { requireProbability } from './require-probability.js';

/** Abramowitz and Stegun 26.2.23: the upper quantile of q <= 1/2 to within 4.5e-4. */
function roughUpperQuantile(q: number): number {
  const t = Math.sqrt(-2 * Math.log(q));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return t - above / below;
}

/**
 * The z for which a standard normal variable is at most z with probability p. The rough value is refined by
 * Halley's method, which triples the digits at each of its three steps. Works on the smaller tail, so that
 * probabilities near 0 keep their accuracy.
 *
 * @throws RangeError unless 0 < p < 1.
 * @example normalQuantile(0.975); // 1.959964
 */
export function normalQuantile(p: number): number {
  requireProbability(p, 'a probability');
  if (p === 0.5) return 0;
  const q = Math.min(p, 1 - p);
  let z = -roughUpperQuantile(q);
  for (let step = 0; step < 3; step += 1) {
    const miss = (normalCdf(z) - q) / normalDensity(z);
    z -= miss / (1 + (z * miss) / 2);
  }
  return p < 0.5 ? z : -z;
}

// Promises how far inside a limit a reading must lie for a wanted probability of conformity. Refuses
// probabilities outside [0.5, 1).
import { findRoot } from '../numbers/find-root.js';
import { normalQuantile } from '../numbers/normal-quantile.js';
import type { Spread } from './spread.js';
import { spreadCdf } from './spread-cdf.js';

/**
 * The distance w, in the unit of the value, at which a single limit is met with the wanted probability:
 * JCGM 106:2012, clause 8.3. With a normal spread w = z u (Table 1 of clause 7 gives z); with a lone
 * rectangle of half-width a it is a (2p - 1), never more than a.
 *
 * @throws RangeError unless 0.5 <= probability < 1.
 * @example guardBand(normalSpread(1), 0.95); // 1.6449
 */
export function guardBand(spread: Spread, probability: number): number {
  if (!(probability >= 0.5 && probability < 1)) {
    throw new RangeError(`a guard band needs a probability from 0.5 to 1, got ${probability}`);
  }
  if (probability === 0.5) return 0;
  const { halfWidth, normal } = spread;
  if (halfWidth === 0) return normal * normalQuantile(probability);
  const furthest = halfWidth + normal * normalQuantile(probability);
  return -findRoot((distance) => spreadCdf(distance, spread) - (1 - probability), -furthest, 0);
}

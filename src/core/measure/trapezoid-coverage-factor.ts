// Promises the coverage factor of the sum of two rectangles, exactly; with one of them zero, that of a single
// rectangle. Refuses negative half-widths, two zeros, and probabilities outside (0, 1).
import { requireProbability } from '../numbers/require-probability.js';

/**
 * The sum of rectangles of half-widths a and b is a trapezoid of half-width a + b, flat over the share
 * beta = |a - b| / (a + b) of it, with u^2 = (a + b)^2 (1 + beta^2) / 6. The coverage factor is
 *
 *   k = (1 - sqrt((1 - p)(1 - beta^2))) / sqrt((1 + beta^2) / 6)   where beta <= p / (2 - p),
 *   k = p (1 + beta) / 2 / sqrt((1 + beta^2) / 6)                   otherwise:
 *
 * EA-4/02 S10. A single rectangle has beta = 1 and k = p sqrt(3): EA-4/02 S9.
 *
 * @throws RangeError unless both half-widths are 0 or more, one above 0, and 0 < probability < 1.
 * @example trapezoidCoverageFactor(50, 25, 0.95); // 1.834
 */
export function trapezoidCoverageFactor(a: number, b: number, probability: number): number {
  requireProbability(probability, 'a coverage probability');
  if (!(a >= 0 && b >= 0 && a + b > 0)) {
    throw new RangeError('half-widths are 0 or more, and one of them above 0');
  }
  const beta = Math.abs(a - b) / (a + b);
  const perHalfWidth = Math.sqrt((1 + beta * beta) / 6);
  const half =
    beta <= probability / (2 - probability)
      ? 1 - Math.sqrt((1 - probability) * (1 - beta * beta))
      : (probability * (1 + beta)) / 2;
  return half / perHalfWidth;
}

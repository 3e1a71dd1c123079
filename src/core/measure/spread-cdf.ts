// Promises the probability that a true value lies no further up than so far from its estimate. Refuses
// negative parts and a distance that is not a number; both parts zero is a step at the estimate.
import { normalCdf } from '../numbers/normal-cdf.js';
import { normalDensity } from '../numbers/normal-density.js';
import type { Spread } from './spread.js';

/** A rectangle this narrow beside the normal part is indistinguishable from more of the normal part. */
const negligible = 1e-4;

/** The integral of Phi from minus infinity to z. */
const rampOf = (z: number): number => z * normalCdf(z) + normalDensity(z);

function lowerHalf(distance: number, { halfWidth, normal }: Spread): number {
  if (halfWidth <= negligible * normal) {
    return normalCdf(distance / Math.hypot(normal, halfWidth / Math.sqrt(3)));
  }
  if (normal === 0) return Math.max(0, (distance + halfWidth) / (2 * halfWidth));
  const ramps = rampOf((distance + halfWidth) / normal) - rampOf((distance - halfWidth) / normal);
  return Math.max(0, (normal / (2 * halfWidth)) * ramps);
}

/**
 * P(X <= distance) for X = rectangle of half-width a + normal of standard deviation s:
 *
 *   (s / 2a) [ G((d + a)/s) - G((d - a)/s) ],  G(z) = z Phi(z) + phi(z),
 *
 * the convolution of the two densities, integrated. Symmetric about 0, so the upper half is taken from the
 * lower, which keeps small probabilities accurate.
 *
 * @param distance from the estimate, in its unit; infinities give 0 and 1
 * @throws RangeError when a part of the spread is negative, or the distance is NaN.
 */
export function spreadCdf(distance: number, spread: Spread): number {
  const { halfWidth, normal } = spread;
  if (!(halfWidth >= 0 && normal >= 0) || Number.isNaN(distance)) {
    throw new RangeError('a spread needs parts of 0 or more, and a distance');
  }
  if (distance === -Infinity) return 0;
  if (distance === Infinity) return 1;
  if (halfWidth === 0 && normal === 0) return distance < 0 ? 0 : 1;
  return distance <= 0 ? lowerHalf(distance, spread) : 1 - lowerHalf(-distance, spread);
}

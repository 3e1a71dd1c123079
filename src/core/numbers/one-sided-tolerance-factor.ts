// Promises the exact one-sided normal tolerance factor. Refuses fewer than two values, and
// shares or confidences under one half, for which the limit may lie below the mean.
import { findRoot } from './find-root.js';
import { incompleteGamma } from './incomplete-gamma.js';
import { integrate } from './integrate.js';
import { normalCdf } from './normal-cdf.js';
import { normalDensity } from './normal-density.js';
import { normalQuantile } from './normal-quantile.js';
import { requireToleranceDesign } from './require-tolerance-design.js';

const cut = 9;

/**
 * The k for which mean + k s lies above at least `share` of a normal population with this `confidence`. It
 * is the non-central t quantile with nu = n - 1 and non-centrality sqrt(n) z, divided by sqrt(n): NIST/
 * SEMATECH e-Handbook 7.2.6.3. That quantile is found here from its meaning,
 *
 *   confidence = E over v ~ N(0, 1) of P( k S >= z + v / sqrt(n) ),  nu S^2 ~ chi^2 with nu,
 *
 * where the chance is 1 as soon as the right side is not positive.
 *
 * @throws RangeError unless n is whole and 2 or more, 0.5 <= share < 1 and 0.5 < confidence < 1.
 * @example oneSidedToleranceFactor(43, 0.9, 0.99); // 1.873954
 */
export function oneSidedToleranceFactor(n: number, share: number, confidence: number): number {
  requireToleranceDesign(n, share, confidence);
  if (share < 0.5 || confidence <= 0.5) {
    throw new RangeError(
      'a one-sided limit needs a share of 0.5 or more and a confidence above 0.5',
    );
  }
  const nu = n - 1;
  const z = normalQuantile(share);
  const certainBelow = Math.max(-cut, -Math.sqrt(n) * z);
  const reached = (k: number): number =>
    normalCdf(certainBelow) +
    integrate(
      (v) => {
        const needed = Math.max(0, z + v / Math.sqrt(n)) / k;
        return normalDensity(v) * incompleteGamma(nu / 2, (nu * needed * needed) / 2).upper;
      },
      certainBelow,
      cut,
    );
  let low = 1;
  while (reached(low) > confidence) low /= 2;
  let high = 2;
  while (reached(high) < confidence) high *= 2;
  return findRoot((k) => reached(k) - confidence, low, high);
}

// Promises the exact two-sided normal tolerance factor, for as few as two values. Takes some milliseconds:
// not for every reading. Refuses fewer than two values.
import { findRoot } from './find-root.js';
import { incompleteGamma } from './incomplete-gamma.js';
import { integrate } from './integrate.js';
import { normalCdf } from './normal-cdf.js';
import { normalDensity } from './normal-density.js';
import { normalQuantile } from './normal-quantile.js';
import { requireToleranceDesign } from './require-tolerance-design.js';

/** Beyond nine standard deviations of the mean nothing is left to add. */
const cut = 9;

/** Half the width of the interval about an offset centre that holds the share of a standard normal. */
function coveringHalfWidth(offset: number, share: number): number {
  const tail = normalQuantile((1 + share) / 2);
  const missing = (r: number): number => normalCdf(offset + r) - normalCdf(offset - r) - share;
  return findRoot(missing, tail / 2, offset + tail + 1);
}

/**
 * The k for which mean -/+ k s holds at least `share` of a normal population with this `confidence`:
 *
 *   confidence = E over z ~ N(0, 1/n) of P( chi^2 with nu degrees of freedom >= nu r(z)^2 / k^2 ),
 *
 * where r(z) is half the width that holds the share about a mean that missed by z: Wald and Wolfowitz
 * (1946); tabled in ISO 16269-6.
 *
 * @throws RangeError unless n is whole and 2 or more and both shares lie between 0 and 1.
 * @example exactToleranceFactor(5, 0.95, 0.95); // 5.077
 */
export function exactToleranceFactor(n: number, share: number, confidence: number): number {
  requireToleranceDesign(n, share, confidence);
  const nu = n - 1;
  const reached = (k: number): number =>
    2 *
    integrate(
      (z) => {
        const r = coveringHalfWidth(z / Math.sqrt(n), share);
        return normalDensity(z) * incompleteGamma(nu / 2, (nu * r * r) / (2 * k * k)).upper;
      },
      0,
      cut,
      1e-9,
    );
  let high = 2;
  while (reached(high) < confidence) high *= 2;
  return findRoot((k) => reached(k) - confidence, normalQuantile((1 + share) / 2) / 4, high);
}

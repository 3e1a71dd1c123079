// Promises the place where a continuous function changes sign, to the last digits of a double. Refuses an
// interval without a change of sign.

const mostSteps = 400;

/**
 * Chandrupatla's method (1997): inverse quadratic interpolation where the three last points allow it, else
 * bisection; it never leaves the bracket.
 *
 * @throws RangeError when f(low) and f(high) have the same sign, or f gives something that is not a number.
 * @example findRoot((x) => x * x - 2, 0, 2); // 1.41421356
 */
export function findRoot(f: (x: number) => number, low: number, high: number): number {
  let newest = high;
  let other = low;
  let oldest = low;
  let fNewest = f(newest);
  let fOther = f(other);
  let fOldest = fOther;
  if (!(fNewest * fOther <= 0) || Number.isNaN(fNewest) || Number.isNaN(fOther)) {
    throw new RangeError(`no change of sign between ${low} and ${high}`);
  }
  let fraction = 0.5;
  for (let step = 0; step < mostSteps; step += 1) {
    const best = Math.abs(fNewest) < Math.abs(fOther) ? newest : other;
    if (fNewest === 0) return newest;
    if (fOther === 0) return other;
    const width = Math.abs(other - newest);
    const tolerance = 2 * Number.EPSILON * Math.abs(best) + Number.MIN_VALUE;
    if (width <= 2 * tolerance) return best;
    const margin = tolerance / width;

    const x = newest + Math.min(1 - margin, Math.max(margin, fraction)) * (other - newest);
    const fx = f(x);
    if (Number.isNaN(fx)) throw new RangeError(`the function has no value at ${x}`);
    if (Math.sign(fx) === Math.sign(fNewest)) {
      oldest = newest;
      fOldest = fNewest;
    } else {
      oldest = other;
      fOldest = fOther;
      other = newest;
      fOther = fNewest;
    }
    newest = x;
    fNewest = fx;

    const xi = (newest - other) / (oldest - other);
    const phi = (fNewest - fOther) / (fOldest - fOther);
    const interpolates = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
    fraction = interpolates
      ? (fNewest / (fOther - fNewest)) * (fOldest / (fOther - fOldest)) +
        ((oldest - newest) / (other - newest)) *
          (fNewest / (fOldest - fNewest)) *
          (fOther / (fOldest - fOther))
      : 0.5;
  }
  return Math.abs(fNewest) < Math.abs(fOther) ? newest : other;
}

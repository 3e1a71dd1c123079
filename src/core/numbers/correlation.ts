// Promises the correlation of two series of equal length, -1 to 1. Refuses series of unequal length, fewer
// than two pairs, and a series that does not vary, whose correlation has no meaning.
import { mean } from './mean.js';
import { requireSample } from './require-sample.js';

/**
 * r = sum (x - mean x)(y - mean y) / sqrt( sum (x - mean x)^2 sum (y - mean y)^2 ): GUM 5.2.2 and 5.2.3.
 *
 * @throws RangeError on unequal lengths, fewer than two pairs, a value not finite, or a constant series.
 * @example correlation([1, 2, 3], [2, 4, 7]); // 0.993
 */
export function correlation(xs: readonly number[], ys: readonly number[]): number {
  requireSample(xs, 2, 'a correlation');
  requireSample(ys, 2, 'a correlation');
  if (xs.length !== ys.length) throw new RangeError('a correlation needs as many x as y');
  const meanX = mean(xs);
  const meanY = mean(ys);
  let products = 0;
  let squaresX = 0;
  let squaresY = 0;
  for (const [i, x] of xs.entries()) {
    const dx = x - meanX;
    const dy = (ys[i] ?? meanY) - meanY;
    products += dx * dy;
    squaresX += dx * dx;
    squaresY += dy * dy;
  }
  if (squaresX === 0 || squaresY === 0)
    throw new RangeError('a constant series has no correlation');
  return Math.max(-1, Math.min(1, products / Math.sqrt(squaresX) / Math.sqrt(squaresY)));
}

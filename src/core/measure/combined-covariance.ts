// Promises how two results that share their inputs vary together: a pair of lines read with one meter, a
// value and the lead resistance taken off it. Refuses lists and matrices that do not fit one another.
import type { Contribution } from './contribution.js';

/** Correlation coefficients of the inputs, row by row; 1 on the diagonal. */
export type CorrelationMatrix = readonly (readonly number[])[];

/**
 * cov(y, z) = sum over i, j of c_i u_i d_j u_j r_ij, for two results of the same inputs in the same order:
 * GUM 5.2.2, eq. 13, and H.2. Without a matrix the inputs are independent. With both results the same it is
 * the square of the combined standard uncertainty.
 *
 * @throws RangeError when the lists differ in length or the matrix does not fit them.
 */
export function combinedCovariance(
  one: readonly Contribution[],
  other: readonly Contribution[],
  correlation?: CorrelationMatrix,
): number {
  const n = one.length;
  if (other.length !== n)
    throw new RangeError('two results need the same inputs in the same order');
  if (correlation && (correlation.length !== n || correlation.some((row) => row.length !== n))) {
    throw new RangeError(`${n} inputs need a correlation matrix of ${n} by ${n}`);
  }
  let sum = 0;
  for (const [i, left] of one.entries()) {
    for (const [j, right] of other.entries()) {
      const r = correlation ? (correlation[i]?.[j] ?? 0) : Number(i === j);
      if (!(Math.abs(r) <= 1)) throw new RangeError('a correlation lies in -1 to 1');
      sum +=
        left.sensitivity *
        left.standardUncertainty *
        right.sensitivity *
        right.standardUncertainty *
        r;
    }
  }
  return sum;
}

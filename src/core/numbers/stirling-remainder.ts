// Promises what Stirling's formula leaves out, to double precision. Refuses arguments under 12, where the
// asymptotic series is not good enough.

/** B(2k) / (2k (2k - 1)) for k = 1, 2, ...: DLMF 5.11.1. */
const coefficients = [
  1 / 12,
  -1 / 360,
  1 / 1260,
  -1 / 1680,
  1 / 1188,
  -691 / 360360,
  1 / 156,
  -3617 / 122400,
];

/**
 * log Gamma(x) - [ (x - 1/2) log x - x + log(2 pi) / 2 ]. Kept apart so that differences of log-gammas of
 * large arguments need not be taken of large numbers.
 *
 * @throws RangeError when x < 12.
 * @example stirlingRemainder(100); // 0.000833331
 */
export function stirlingRemainder(x: number): number {
  if (!(x >= 12)) throw new RangeError(`Stirling's series needs 12 or more, got ${x}`);
  const inverseSquare = 1 / (x * x);
  return coefficients.reduceRight((sum, term) => sum * inverseSquare + term, 0) / x;
}

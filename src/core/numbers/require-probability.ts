// Promises a probability strictly between 0 and 1. Refuses the ends, where quantiles are infinite.

/** @throws RangeError unless 0 < p < 1. */
export function requireProbability(p: number, what: string): void {
  if (!(p > 0 && p < 1)) throw new RangeError(`${what} must lie between 0 and 1, got ${p}`);
}

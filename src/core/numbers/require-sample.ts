// Promises that a sample can be computed with: long enough, every value finite. Refuses anything else, by
// name and place, so that no NaN travels on.

/**
 * @throws RangeError when the sample is shorter than `atLeast` or holds a value that is not finite.
 */
export function requireSample(values: readonly number[], atLeast: number, what: string): void {
  if (values.length < atLeast) {
    throw new RangeError(`${what} needs ${atLeast} or more values, got ${values.length}`);
  }
  for (let at = 0; at < values.length; at += 1) {
    if (!Number.isFinite(values[at]))
      throw new RangeError(`${what}: value number ${at + 1} is not finite`);
  }
}

// Promises that a sample can be computed with: long enough, every value finite. Refuses anything else, by
// name and place, so that no NaN travels on.

/**
 * @throws RangeError when the sample is shorter than `atLeast` or holds a value that is not finite.
 */
export function requireSample(values: readonly number[], atLeast: number, what: string): void {
  if (values.length < atLeast) {
    throw new RangeError(`${what} needs ${atLeast} or more values, got ${values.length}`);
  }
  const place = values.findIndex((value) => !Number.isFinite(value));
  if (place >= 0) throw new RangeError(`${what}: value number ${place + 1} is not finite`);
}

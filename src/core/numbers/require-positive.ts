// Promises a number above zero; infinity passes, since degrees of freedom may be infinite.

/** @throws RangeError unless value > 0. */
export function requirePositive(value: number, what: string): void {
  if (!(value > 0)) throw new RangeError(`${what} must be above 0, got ${value}`);
}

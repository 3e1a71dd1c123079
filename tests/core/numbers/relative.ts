// How far a value is from a reference, as a share of the reference.
export const relativeError = (value: number, reference: number): number =>
  Math.abs(value - reference) / Math.abs(reference);

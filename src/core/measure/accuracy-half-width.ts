// Promises half the width of the band that a meter's accuracy statement allows. Refuses negative
// statements and values not finite.

/** A maker's statement: +/-(percent of reading + counts of the last digit). */
export interface Accuracy {
  readonly percent: number;
  readonly counts: number;
}

export interface AccuracyInput {
  /** As shown, in the function's SI unit. */
  readonly value: number;
  /** One step of the last digit, in the same unit. */
  readonly resolution: number;
  readonly accuracy: Accuracy;
}

/**
 * |value| percent / 100 + counts resolution, in the unit of the value. A statement of the form percent of
 * reading plus percent of range fits too: counts times resolution is then the share of the range.
 *
 * @throws RangeError on a value not finite, or a negative percent, count or resolution.
 * @example accuracyHalfWidth({ value: 2, resolution: 0.001, accuracy: { percent: 0.08, counts: 2 } }); // 0.0036
 */
export function accuracyHalfWidth({ value, resolution, accuracy }: AccuracyInput): number {
  const { percent, counts } = accuracy;
  if (!Number.isFinite(value)) throw new RangeError('an accuracy needs a finite value');
  if (!(resolution >= 0 && percent >= 0 && counts >= 0)) {
    throw new RangeError('percent, counts and resolution are 0 or more');
  }
  return (Math.abs(value) * percent) / 100 + counts * resolution;
}

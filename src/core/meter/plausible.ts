// Refuses values no meter of this kind can show: a damaged line may still look like a number.
import { type MeasureFunction, measureFunctions } from '../reading.js';
import type { Driver } from './driver-format.js';

/** A driver that names no exact instrument still has the order of magnitude right. */
const headroom = 10;

/** Tells values within ten times the highest range the driver states for the function from absurd ones. */
export const plausibilityOf = (
  driver: Driver,
): ((measure: MeasureFunction, value: number) => boolean) => {
  const highest = new Map(
    measureFunctions.map((measure) => [
      measure,
      Math.max(
        0,
        ...driver.accuracy.filter((row) => row.function === measure).map((row) => row.fullScale),
      ),
    ]),
  );
  return (measure, value) => Math.abs(value) <= headroom * (highest.get(measure) ?? 0);
};

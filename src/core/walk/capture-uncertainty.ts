// The standard uncertainty of a captured value: the meter's accuracy, its last digit, and the scatter and
// unfinished creep of the touch.
import type { AccuracyStatement } from '../events.js';
import { rowAt } from './accuracy.js';

export interface CapturedValue {
  readonly value: number;
  readonly range: number | undefined;
  readonly resolution: number;
  /** Standard deviation of the level from the touch itself. */
  readonly deviation: number;
}

/** In the value's own unit. Accuracy and resolution are rectangular (GUM 4.3.7, F.2.2.1). */
export const captureUncertainty = (
  accuracy: AccuracyStatement,
  captured: CapturedValue,
): number => {
  const { percent, counts } = rowAt(accuracy, captured.value, captured.range);
  const halfWidth = (percent / 100) * Math.abs(captured.value) + counts * captured.resolution;
  return Math.sqrt(
    (halfWidth * halfWidth) / 3 + captured.resolution ** 2 / 12 + captured.deviation ** 2,
  );
};

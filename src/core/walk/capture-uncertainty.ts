// The standard uncertainty of a captured value: the meter's accuracy, its last digit, and the scatter and
// unfinished creep of the touch.
import type { AccuracyStatement } from '../events.js';
import { accuracyHalfWidth } from '../measure/accuracy-half-width.js';
import { rectangularUncertainty } from '../measure/rectangular-uncertainty.js';
import { resolutionUncertainty } from '../measure/resolution-uncertainty.js';
import { rowAt } from './accuracy.js';

export interface CapturedValue {
  readonly value: number;
  readonly range: number | undefined;
  readonly resolution: number;
  /** Standard deviation of the level from the touch itself. */
  readonly deviation: number;
}

/** In the value's own unit: the parts combined as the root of their squares (GUM 5.1.2). */
export const captureUncertainty = (
  accuracy: AccuracyStatement,
  { value, range, resolution, deviation }: CapturedValue,
): number => {
  const halfWidth = accuracyHalfWidth({
    value,
    resolution,
    accuracy: rowAt(accuracy, value, range),
  });
  return Math.hypot(
    rectangularUncertainty(halfWidth),
    resolutionUncertainty(resolution),
    deviation,
  );
};

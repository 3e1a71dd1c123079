// Promises the standard uncertainty that a last digit leaves. Refuses a negative step.
import { rectangularUncertainty } from './rectangular-uncertainty.js';

/**
 * u = step / sqrt(12) = 0.29 step: the true value lies anywhere within half a step: GUM F.2.2.1.
 *
 * @throws RangeError when the step is negative or not a number.
 * @example resolutionUncertainty(0.1); // 0.0289
 */
export function resolutionUncertainty(step: number): number {
  return rectangularUncertainty(step / 2);
}

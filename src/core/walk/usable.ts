// Which readings may be judged at all. A reading in another function, or with hold, relative or min/max on,
// is seen and stored but never compared with a limit.
import type { HoldReason } from '../events.js';
import type { Plan } from '../profile/plan.js';
import { isFault, type MeasureFunction, type Reading } from '../reading.js';
import type { Shown } from './shown.js';

export interface Unusable {
  readonly reason: HoldReason;
  readonly detail: string;
}

/** Differences under this mean nothing: contact resistance or pick-up, in the function's unit. */
export const contactFloor = (measure: MeasureFunction): number =>
  measure === 'resistance' || measure === 'continuity' ? 0.3 : 0.003;

/** True for a reading in the walk's own function that carries no flag: nearly all of them. */
export const isPlain = (plan: Plan, shown: Shown): boolean =>
  shown.function === plan.function &&
  shown.flags === undefined &&
  (shown.polarity === undefined || shown.polarity === plan.polarity);

/** Why a reading may not be judged, or null when it may. */
export const unusable = (plan: Plan, reading: Reading): Unusable | null => {
  if (isFault(reading)) return null;
  if (reading.function !== undefined && reading.function !== plan.function) {
    return {
      reason: 'wrong-function',
      detail: `the meter reads ${reading.function}, the walk needs ${plan.function}`,
    };
  }
  if (reading.polarity !== undefined && reading.polarity !== plan.polarity) {
    return {
      reason: 'wrong-function',
      detail: `the leads are ${reading.polarity}, the walk needs ${plan.polarity}`,
    };
  }
  for (const flag of reading.flags ?? []) {
    if (flag === 'hold') return { reason: 'flag-hold', detail: 'hold is on at the meter' };
    if (flag === 'relative')
      return { reason: 'flag-relative', detail: 'relative is on at the meter' };
    if (flag === 'minmax') return { reason: 'flag-minmax', detail: 'min/max is on at the meter' };
  }
  return null;
};

/** A resistance this far under zero is residual charge, not noise. */
export const isResidualCharge = (
  measure: MeasureFunction,
  value: number,
  resolution: number,
): boolean =>
  (measure === 'resistance' || measure === 'continuity') && value < -Math.max(1, 10 * resolution);

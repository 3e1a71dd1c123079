// Promises what this meter should read on a good board, given how it differs from the meter the expected values
// were taken with, and what the doubt in that difference adds to a reading's uncertainty.

import type { PlannedPin } from '../profile/plan.js';
import type { ExpectedBounds } from '../verdict.js';
import type { Shift, ShiftEstimate, Shifts, UntoldShift } from './estimate-shift.js';
import { shiftClassOf } from './shift-class.js';

export interface ShiftedExpectation {
  readonly expected: ExpectedBounds;
  /** Of the shifted limits, in their own unit; 0 where nothing is shifted. */
  readonly standardUncertainty: number;
}

/**
 * Limits and nominal times the scale, or plus the offset. The limits' uncertainty is the scale's times the
 * nominal, or the offset's.
 *
 * @example shiftedExpectation({ nominal: 100, low: 90, high: 110 }, { scale: 1.06, ... }).expected.high; // 116.6
 */
export const shiftedExpectation = (
  expected: ExpectedBounds,
  shift: Shift | null,
): ShiftedExpectation => {
  if (shift === null || expected === null || expected === 'overload') {
    return { expected, standardUncertainty: 0 };
  }
  const { nominal, low, high } = expected;
  if ('scale' in shift) {
    const { scale, standardUncertainty } = shift;
    return {
      expected: { nominal: scale * nominal, low: scale * low, high: scale * high },
      standardUncertainty: standardUncertainty * nominal,
    };
  }
  const { offset, standardUncertainty } = shift;
  return {
    expected: { nominal: nominal + offset, low: low + offset, high: high + offset },
    standardUncertainty,
  };
};

/** The shift that holds for a pin: that of its own class, or none. */
export const shiftFor = (pin: PlannedPin, shifts: Shifts): Shift | null => {
  const own = shiftClassOf(pin);
  return own === null ? null : shifts[own];
};

/** What may be there without being told: never beside a shift of the pin's class that is. */
export const untoldFor = (
  pin: PlannedPin,
  { untold }: Pick<ShiftEstimate, 'untold'>,
): UntoldShift | null => {
  const own = shiftClassOf(pin);
  return own === null ? null : untold[own];
};

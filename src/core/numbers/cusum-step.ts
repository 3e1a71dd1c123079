// Promises the next state of a tabular CUSUM, which finds a small lasting shift sooner than any single
// reading shows it. Refuses a negative slack and values not finite.

export interface CusumState {
  /** Sum of departures above the target, each less the slack, never under 0; in the unit of the values. */
  readonly high: number;
  /** The same below the target. */
  readonly low: number;
}

export const cusumStart: CusumState = { high: 0, low: 0 };

/**
 * high = max(0, high + x - target - slack), low = max(0, low + target - slack - x): NIST/SEMATECH
 * e-Handbook 6.3.2.3. A slack of half the shift to be found is usual; an alarm is either sum over the
 * decision value, four to five standard deviations.
 *
 * @throws RangeError on a value, target or slack not finite, or a slack below 0.
 * @example cusumStep(cusumStart, 12, { target: 10, slack: 0.5 }); // { high: 1.5, low: 0 }
 */
export function cusumStep(
  state: CusumState,
  value: number,
  { target, slack }: { readonly target: number; readonly slack: number },
): CusumState {
  if (!Number.isFinite(value - target) || !(slack >= 0)) {
    throw new RangeError('a CUSUM needs finite values and a slack of 0 or more');
  }
  return {
    high: Math.max(0, state.high + (value - target) - slack),
    low: Math.max(0, state.low - (value - target) - slack),
  };
}

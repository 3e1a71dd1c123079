// By how much this meter, or this board, reads other than the profile's nominal values, as far as the walk has
// seen: a mean of logarithms over its normal pins. Only for telling pins apart; verdicts do not use it.

export interface Shift {
  readonly n: number;
  /** Sum of ln(reading / nominal). */
  readonly sum: number;
}

export const unknownShift: Shift = { n: 0, sum: 0 };

/** Before any pin: meters and boards differ from a profile by about this (standard deviation of the logarithm). */
const priorSpread = 0.04;
/** One healthy line differs from the common shift by about this. */
const lineSpread = 0.035;
/** A pin further off than this tells nothing about a common shift. */
const farthest = 0.3;

export const learnShift = (shift: Shift, value: number, nominal: number): Shift => {
  const log = value > 0 && nominal > 0 ? Math.log(value / nominal) : Number.NaN;
  return Math.abs(log) <= farthest ? { n: shift.n + 1, sum: shift.sum + log } : shift;
};

export interface ShiftEstimate {
  readonly mean: number;
  readonly variance: number;
}

/** Mean and variance of the common shift: a normal mean with a normal prior. */
export const estimateShift = ({ n, sum }: Shift): ShiftEstimate => {
  const precision = 1 / priorSpread ** 2 + n / lineSpread ** 2;
  return { mean: sum / lineSpread ** 2 / precision, variance: 1 / precision };
};

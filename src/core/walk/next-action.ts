// What helps most where no class is likely enough, chosen by trying in thought what each remedy would leave of the
// uncertainty: a longer hold, a finer range, another function, the mate, or else the same once more.
import type { MateComparison } from '../context/compare-mates.js';
import type { MeasuredPin, ReadPin } from '../context/read-pin.js';
import { isMeasured } from '../context/read-pin.js';
import { inferResolution, rowAt } from '../measure/accuracy-row.js';
import type { Plan, PlannedPin } from '../profile/plan.js';
import type { AccuracyStatement } from '../session-events.js';
import type { NextAction } from '../verdict.js';
import { statedHalfWidth } from './capture-uncertainty.js';
import { type Judgement, judge } from './judge.js';

export interface Unsure {
  /** With the limits it was judged by. */
  readonly pin: PlannedPin;
  readonly read: ReadPin;
  readonly mate: MateComparison | null;
}

/** A finer range is worth the dial only where it takes off this much of what the meter may be wrong by. */
const worthChanging = 0.8;

export const nextAction = (
  { verdict, expected }: Judgement,
  { pin, read, mate }: Unsure,
  accuracy: AccuracyStatement,
  measure: Plan['function'],
): NextAction | undefined => {
  if (verdict === 'wobble') return 'hold-longer';
  if (verdict !== 'unsure') return undefined;
  const judged = { ...pin, expected };
  if (isMeasured(read) && expected !== null) {
    const halfWidth = read.halfWidth ?? 0;
    if (isSureBy(judged, read, halfWidth)) return 'hold-longer';
    const finest = finestHalfWidth(read, accuracy, measure);
    if (finest < worthChanging * halfWidth && isSureBy(judged, read, finest)) return 'change-range';
  }
  if (mate !== null && mate.finding === 'not-comparable') {
    if (mate.because === 'not-read') return 'compare-mate';
    if (mate.because === 'different-ranges') return 'change-range';
  }
  return pin.elsewhere === undefined ? 'retake' : 'change-function';
};

/** Would the verdict be sure if nothing but a rectangle of this half-width were left of the uncertainty? */
const isSureBy = (pin: PlannedPin, { value }: MeasuredPin, halfWidth: number): boolean =>
  judge(pin, { value, standardUncertainty: halfWidth / Math.sqrt(3), halfWidth }).verdict !==
  'unsure';

/** Of the smallest range that reaches the value. */
const finestHalfWidth = (
  { value }: MeasuredPin,
  accuracy: AccuracyStatement,
  measure: Plan['function'],
): number => {
  const range = rowAt(accuracy, value, undefined).fullScale ?? undefined;
  const resolution = inferResolution(accuracy, measure, value, range);
  return statedHalfWidth(accuracy, { value, range, resolution });
};

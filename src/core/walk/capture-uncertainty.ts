// What a captured value is worth: the meter's accuracy and its last digit as rectangles, and the scatter and
// unfinished creep of the touch.

import type { LeadZero } from '../context/lead-zero.js';
import { rowAt } from '../measure/accuracy-row.js';
import { combinedUncertainty } from '../measure/combined-uncertainty.js';
import type { Contribution } from '../measure/contribution.js';
import { readingBudget } from '../measure/reading-uncertainty.js';
import { spreadOfBudget } from '../measure/spread.js';
import type { AccuracyStatement } from '../session-events.js';

export interface ShownValue {
  readonly value: number;
  readonly range: number | undefined;
  readonly resolution: number;
}

export interface CapturedValue extends ShownValue {
  /** Standard deviation of the level from the touch itself. */
  readonly deviation: number;
  /** What was taken off for the leads, where they were zeroed. */
  readonly leads: Pick<LeadZero, 'standardUncertainty' | 'degreesOfFreedom'> | null;
}

/** In the value's own unit: the parts combined as the root of their squares (GUM 5.1.2). */
export const captureUncertainty = (accuracy: AccuracyStatement, captured: CapturedValue): number =>
  combinedUncertainty(budgetOf(accuracy, captured, captured.deviation, captured.leads));

/** Half the width of the rectangle that dominates what the meter's statement allows. */
export const statedHalfWidth = (accuracy: AccuracyStatement, shown: ShownValue): number =>
  spreadOfBudget(budgetOf(accuracy, shown, 0, null)).halfWidth;

const budgetOf = (
  accuracy: AccuracyStatement,
  { value, range, resolution }: ShownValue,
  touch: number,
  leads: CapturedValue['leads'],
): readonly Contribution[] =>
  readingBudget({
    value,
    resolution,
    accuracy: rowAt(accuracy, value, range),
    repeatability: null,
    touch,
    ...(leads === null ? {} : { leadZero: leads }),
  });

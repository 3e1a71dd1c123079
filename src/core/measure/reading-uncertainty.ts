// Promises what a meter's reading is worth: its standard and expanded uncertainty and the budget behind them.
// Refuses statements that are negative or not finite, and a spread of fewer than two readings.
import { type AccuracyInput, accuracyHalfWidth } from './accuracy-half-width.js';
import { combinedUncertainty } from './combined-uncertainty.js';
import type { Contribution } from './contribution.js';
import { coverageFactor } from './coverage-factor.js';
import { effectiveDegreesOfFreedom } from './effective-degrees-of-freedom.js';
import { rectangularUncertainty } from './rectangular-uncertainty.js';
import { resolutionUncertainty } from './resolution-uncertainty.js';

export interface ReadingUncertaintyInput extends AccuracyInput {
  /** Sample standard deviation and number of the readings averaged; null where only one was taken. */
  readonly repeatability: { readonly s: number; readonly n: number } | null;
  /** Standard deviation of the level, where a fit over the touch gives it and no mean was taken. */
  readonly touch?: number;
  /** What is known of the lead resistance already taken off the value, in its unit. */
  readonly leadZero?: { readonly standardUncertainty: number; readonly degreesOfFreedom: number };
}

export interface ReadingUncertainty {
  /** In the unit of the value, like `expanded`. */
  readonly standardUncertainty: number;
  /** Infinity where nothing was estimated from few readings. */
  readonly degreesOfFreedom: number;
  /** For 95 %. */
  readonly expanded: number;
  readonly coverageFactor: number;
  readonly budget: readonly Contribution[];
}

const row = (
  source: string,
  distribution: Contribution['distribution'],
  standardUncertainty: number,
  degreesOfFreedom = Infinity,
): Contribution => ({
  source,
  distribution,
  standardUncertainty,
  sensitivity: 1,
  degreesOfFreedom,
});

/**
 * Accuracy and resolution as rectangles (GUM 4.3.7, F.2.2.1), repeatability as s / sqrt(n) with n - 1
 * degrees of freedom (GUM 4.2.3), the touch and the lead zero as they come.
 *
 * @throws RangeError on negative statements, values not finite, or a repeatability of fewer than two.
 */
export function readingBudget(input: ReadingUncertaintyInput): readonly Contribution[] {
  const { repeatability, leadZero, touch } = input;
  const budget = [
    row('accuracy', 'rectangular', rectangularUncertainty(accuracyHalfWidth(input))),
    row('resolution', 'rectangular', resolutionUncertainty(input.resolution)),
  ];
  if (repeatability) {
    const { s, n } = repeatability;
    if (!(s >= 0 && n >= 2)) {
      throw new RangeError('repeatability needs two or more readings and a spread of 0 or more');
    }
    budget.push(row('repeatability', 'normal', s / Math.sqrt(n), n - 1));
  }
  if (touch !== undefined) budget.push(row('touch', 'normal', touch));
  if (leadZero) {
    budget.push(
      row('lead zero', 'normal', leadZero.standardUncertainty, leadZero.degreesOfFreedom),
    );
  }
  return budget;
}

/**
 * The rows of `readingBudget`, independent of one another and combined by GUM 5.1.2.
 *
 * @throws RangeError as `readingBudget` does.
 * @example readingUncertainty({ value: 0.512, resolution: 0.001, accuracy: { percent: 0.5, counts: 3 },
 *   repeatability: null }).standardUncertainty; // 0.003223
 */
export function readingUncertainty(input: ReadingUncertaintyInput): ReadingUncertainty {
  const budget = readingBudget(input);
  const standardUncertainty = combinedUncertainty(budget);
  if (!Number.isFinite(standardUncertainty)) throw new RangeError('an uncertainty must be finite');
  const factor = standardUncertainty === 0 ? 0 : coverageFactor(budget);
  return {
    standardUncertainty,
    degreesOfFreedom: effectiveDegreesOfFreedom(budget),
    expanded: factor * standardUncertainty,
    coverageFactor: factor,
    budget,
  };
}

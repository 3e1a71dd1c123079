// The meter's accuracy and the step of its last digit at one reading.
import { type MeasureFunction, siUnit } from '../reading.js';
import type { AccuracyStatement } from '../session-events.js';

/** Full scale of the lowest range meters have, in ohm and in volt. Common practice, no source. */
const lowestRange = { Ω: 400, V: 1 } as const;

/**
 * The step of the last digit at a value, where the meter does not tell: the smallest decade step with which
 * the display's full scale in counts still reaches the value (or the range, when it is known).
 */
export const inferResolution = (
  accuracy: AccuracyStatement,
  measure: MeasureFunction,
  value: number,
  range: number | undefined,
): number => {
  const row = rowAt(accuracy, value, range);
  if (row.resolution !== null) return row.resolution;
  const reach = range ?? Math.max(Math.abs(value), lowestRange[siUnit(measure)]);
  const least = (reach / accuracy.fullScaleCounts) * (1 - 1e-9);
  return decades.find((step) => step >= least) ?? 10 ** Math.ceil(Math.log10(least));
};

const decades = [1e-6, 1e-5, 1e-4, 1e-3, 0.01, 0.1, 1, 10, 100, 1e3, 1e4, 1e5] as const;

/** The accuracy row that holds for a range, or for the smallest range that reaches the value. */
export const rowAt = (
  accuracy: AccuracyStatement,
  value: number,
  range: number | undefined,
): AccuracyStatement['rows'][number] => {
  const reach = range ?? Math.abs(value);
  let found = accuracy.rows[0] as AccuracyStatement['rows'][number];
  let best = Number.POSITIVE_INFINITY;
  for (const row of accuracy.rows) {
    const full = row.fullScale ?? Number.MAX_VALUE;
    if (full >= reach * (1 - 1e-9) && full < best) [found, best] = [row, full];
  }
  return found;
};

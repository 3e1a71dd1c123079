// The ranges of a simulated display and what it can show on them. A display has so many counts: full scale
// divided by resolution. Refuses counts and rates outside those of real hand-held and bench meters.

import { rangesOf } from '../core/meter/accuracy.js';
import type { AccuracyRow, Driver } from '../core/meter/driver-format.js';
import type { MeasureFunction } from '../core/reading.js';

export const leastCounts = 4_000;
export const mostCounts = 60_000;
export const leastRate = 2.5;
export const mostRate = 50;

/** Full scale and step, in the function's SI unit. */
export type DisplayRange = Pick<AccuracyRow, 'fullScale' | 'resolution'>;

/**
 * The same driver with another display: each range keeps its decade and gets the finest decimal step that
 * still fits. A driver whose lines carry range codes has one display only.
 * @throws RangeError for counts outside 4,000 to 60,000, or other counts than a coded driver's own.
 */
export const withCounts = (driver: Driver, counts: number): Driver => {
  if (counts === driver.displayCounts) return driver;
  if (!Number.isInteger(counts) || counts < leastCounts || counts > mostCounts)
    throw new RangeError(`counts must be a whole number from 4000 to 60000, not ${counts}`);
  if (driver.line?.ranges !== undefined)
    throw new RangeError(
      `driver ${driver.id} sends range codes for ${driver.displayCounts} counts; leave counts out`,
    );
  const decades = Math.round(Math.log10(counts / driver.displayCounts));
  return {
    ...driver,
    displayCounts: counts,
    accuracy: driver.accuracy.map((row) => {
      const resolution = Number((row.resolution * 10 ** -decades).toPrecision(9));
      return { ...row, resolution, fullScale: Number((resolution * counts).toPrecision(9)) };
    }),
  };
};

/**
 * The ranges of one function, lowest first.
 * @throws RangeError when the driver has none: such a meter cannot be imitated in that function.
 */
export const displayRanges = (
  driver: Driver,
  measure: MeasureFunction,
): readonly [DisplayRange, ...DisplayRange[]] => {
  const [lowest, ...higher] = rangesOf(driver, measure);
  if (lowest === undefined)
    throw new RangeError(`driver ${driver.id} has no range for ${measure}; choose another driver`);
  return [lowest, ...higher];
};

/** Index of the lowest range that holds `magnitude` (null: no path), or the highest. */
export const rangeHolding = (ranges: readonly DisplayRange[], magnitude: number | null): number => {
  const found =
    magnitude === null ? -1 : ranges.findIndex(({ fullScale }) => magnitude <= fullScale);
  return found < 0 ? ranges.length - 1 : found;
};

/** Index of a fixed range by its full scale; the lowest that is not smaller, or the highest. */
export const fixedRange = (ranges: readonly DisplayRange[], fullScale: number): number =>
  rangeHolding(ranges, fullScale * (1 - 1e-6));

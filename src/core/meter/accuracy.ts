// Which accuracy statement holds for a reading. The statements come from the driver's own table; nothing is
// interpolated and nothing is invented for a function the table leaves out.
import type { MeasureFunction } from '../reading.js';
import type { AccuracyRow, Driver } from './driver-format.js';

/** A range's full scale may be written with a few digits: `1e6` and `999999.9` name the same range. */
const sameRange = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-6 * Math.abs(b);

/** The ranges a driver states for one function, from the lowest full scale to the highest. */
export const rangesOf = (driver: Driver, measure: MeasureFunction): readonly AccuracyRow[] =>
  driver.accuracy
    .filter((row) => row.function === measure)
    .sort((a, b) => a.fullScale - b.fullScale);

/**
 * The accuracy row of one range. With `range` (full scale, SI unit) unknown, the lowest range that holds
 * `value`; with both unknown, or beyond every range, the highest one.
 * @throws RangeError when the driver states no accuracy for the function.
 */
export const accuracyFor = (
  driver: Driver,
  measure: MeasureFunction,
  range?: number,
  value?: number,
): AccuracyRow => {
  const rows = rangesOf(driver, measure);
  const highest = rows.at(-1);
  if (!highest) throw new RangeError(`driver ${driver.id} states no accuracy for ${measure}`);
  const wanted = range ?? (value === undefined ? highest.fullScale : Math.abs(value));
  return (
    rows.find((row) => sameRange(row.fullScale, wanted)) ??
    rows.find((row) => row.fullScale >= wanted) ??
    highest
  );
};

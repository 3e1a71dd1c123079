// `--accuracy PERCENT,COUNTS --counts N`: what the user knows of the meter.
import { type Command, InvalidArgumentError } from 'commander';
import type { Driver } from '../core/meter/driver-format.js';
import type { MeasureFunction } from '../core/reading.js';
import type { AccuracyStatement } from '../core/session-events.js';
import { assumedAccuracy, driverAccuracy, statedAccuracy } from '../core/walk/open-session.js';

export interface AccuracyOptions {
  readonly accuracy?: { readonly percent: number; readonly counts: number };
  readonly counts?: number;
}

export const accuracyOptions = (command: Command): Command =>
  command
    .option(
      '--accuracy <percent,counts>',
      "the meter's accuracy, such as 0.5,3 for ±(0.5 % of reading + 3 counts)",
      readAccuracy,
    )
    .option('--counts <n>', "the display's full scale in counts, such as 6000", readCounts);

/** What was asked for, else the driver's own figures, else the usual assumption. */
export const askedAccuracy = (
  { accuracy, counts }: AccuracyOptions,
  driver: Driver | null,
  measure: MeasureFunction,
): AccuracyStatement => {
  const known = driver === null ? assumedAccuracy : driverAccuracy(driver, measure);
  if (accuracy === undefined && counts === undefined) return known;
  const fullScaleCounts = counts ?? known.fullScaleCounts;
  if (accuracy !== undefined) return statedAccuracy({ ...accuracy, fullScaleCounts });
  return { ...known, fullScaleCounts };
};

const readAccuracy = (text: string): AccuracyOptions['accuracy'] => {
  const match = /^(\d+(?:\.\d+)?),(\d+(?:\.\d+)?)$/u.exec(text);
  if (match === null) throw new InvalidArgumentError('write it as percent,counts, such as 0.5,3');
  return { percent: Number(match[1]), counts: Number(match[2]) };
};

const readCounts = (text: string): number => {
  const counts = /^\d{2,8}$/u.test(text) ? Number(text) : 0;
  if (counts < 10) throw new InvalidArgumentError('write a whole number such as 6000');
  return counts;
};

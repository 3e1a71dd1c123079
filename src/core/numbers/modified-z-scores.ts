// Promises one finite score a value, also when most values are equal. Refuses an empty sample.
import { mean } from './mean.js';
import { median } from './median.js';
import { medianAbsoluteDeviation } from './median-absolute-deviation.js';

/** Beyond this, either way, a value is a possible outlier (Iglewicz and Hoaglin, 1993). */
export const outlierScore = 3.5;

/** The third quartile of the standard normal, to the four digits the source uses. */
const madToSigma = 0.6745;

/** E|x - mu| = sigma sqrt(2 / pi) for a normal variable. */
const meanDeviationToSigma = Math.sqrt(2 / Math.PI);

/**
 * M = 0.6745 (x - median) / MAD: NIST/SEMATECH e-Handbook 1.3.5.17, after Iglewicz and Hoaglin.
 *
 * Where MAD is 0, or no more than rounding, half the values are equal and M has no value; the mean absolute
 * deviation about the median then stands for the spread, scaled the same way. Where that is 0 too, all
 * values are equal and every score is 0. An ordinary z-score cannot exceed (n - 1) / sqrt(n), which hides outliers of a small
 * group; this one can.
 *
 * @throws RangeError on an empty sample or a value that is not finite.
 * @example modifiedZScores([1, 2, 3, 4, 100])[4]; // 65.4
 */
export function modifiedZScores(values: readonly number[]): number[] {
  const centre = median(values);
  const deviations = values.map((value) => value - centre);
  const mad = medianAbsoluteDeviation(values);
  const furthest = deviations.reduce((most, deviation) => Math.max(most, Math.abs(deviation)), 0);
  if (mad > Number.EPSILON * furthest) {
    return deviations.map((deviation) => (madToSigma * deviation) / mad);
  }
  const meanDeviation = mean(deviations.map(Math.abs));
  if (meanDeviation === 0) return deviations.map(() => 0);
  return deviations.map((deviation) => (meanDeviationToSigma * deviation) / meanDeviation);
}

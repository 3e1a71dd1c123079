// The resistance of leads and tips, read with the probes shorted on one another. Refuses what cannot be
// leads: too much, below zero, not holding still, or not resistance at all. Refusals are data: a reason
// and the figures behind it.

import { inferResolution } from '../measure/accuracy-row.js';
import { mean } from '../numbers/mean.js';
import { sampleStandardDeviation } from '../numbers/sample-standard-deviation.js';
import {
  isOverload,
  isValue,
  type MeasureFunction,
  type Reading,
  type ReadingFlag,
} from '../reading.js';
import type { AccuracyStatement } from '../session-events.js';

export interface LeadZero {
  /** To be taken off every resistance read with these leads. */
  readonly ohms: number;
  readonly standardUncertainty: number;
  /** Of the scatter; the resolution is known outright. */
  readonly degreesOfFreedom: number;
  readonly readings: number;
}

export type LeadZeroRefusal =
  | { readonly because: 'too-few'; readonly readings: number; readonly needed: number }
  | { readonly because: 'wrong-function'; readonly function: MeasureFunction }
  | { readonly because: 'flagged'; readonly flag: ReadingFlag }
  | { readonly because: 'not-touching' }
  | { readonly because: 'unsteady'; readonly spreadOhms: number; readonly limitOhms: number }
  | { readonly because: 'negative'; readonly ohms: number }
  | { readonly because: 'too-large'; readonly ohms: number; readonly limitOhms: number };

export type LeadZeroOutcome =
  | { readonly ok: true; readonly zero: LeadZero }
  | { readonly ok: false; readonly refused: LeadZeroRefusal };

const leastReadings = 5;
/** Sound leads and tips read less, and hold still within this. Common practice, no source. */
const mostLeadOhms = 1;
const steadyOhms = 0.05;
const steadySteps = 3;

/**
 * The mean of the readings. u² = s²/n + d²/12: scatter of the mean (GUM 4.2.3) and the last digit d (GUM
 * F.2.2.1). The meter's zero error is in every reading alike, so it goes with what is subtracted.
 *
 * @param readings of the shorted probes, the touch itself left out
 * @example five readings of 0.2 Ω on a meter with steps of 0.1 Ω: 0.2 Ω with u = 0.029 Ω
 */
export const leadZero = (
  readings: readonly Reading[],
  accuracy: AccuracyStatement,
): LeadZeroOutcome => {
  const foreign = firstForeign(readings);
  if (foreign !== null) return { ok: false, refused: foreign };
  const values = readings.filter(isValue);
  if (values.length < leastReadings) {
    const refused = { because: 'too-few', readings: values.length, needed: leastReadings } as const;
    return { ok: false, refused };
  }
  const step = Math.max(
    ...values.map(
      ({ value, range, resolution }) =>
        resolution ?? inferResolution(accuracy, 'resistance', value, range),
    ),
  );
  const ohms = values.map(({ value }) => value);
  const refused = implausible(ohms, step);
  if (refused !== null) return { ok: false, refused };
  const n = ohms.length;
  return {
    ok: true,
    zero: {
      ohms: mean(ohms),
      standardUncertainty: Math.sqrt(sampleStandardDeviation(ohms) ** 2 / n + step ** 2 / 12),
      degreesOfFreedom: n - 1,
      readings: n,
    },
  };
};

const firstForeign = (readings: readonly Reading[]): LeadZeroRefusal | null => {
  for (const reading of readings) {
    if (isOverload(reading)) return { because: 'not-touching' };
    if (!isValue(reading)) continue;
    if (reading.function !== 'resistance') {
      return { because: 'wrong-function', function: reading.function };
    }
    const flag = reading.flags?.find((one) => one !== 'low-battery');
    if (flag !== undefined) return { because: 'flagged', flag };
  }
  return null;
};

const implausible = (ohms: readonly number[], step: number): LeadZeroRefusal | null => {
  const spreadOhms = Math.max(...ohms) - Math.min(...ohms);
  const limitOhms = Math.max(steadyOhms, steadySteps * step);
  // A whisker over the limit is rounding of decimal steps.
  if (spreadOhms > limitOhms * (1 + 1e-9)) return { because: 'unsteady', spreadOhms, limitOhms };
  const centre = mean(ohms);
  if (centre < -step) return { because: 'negative', ohms: centre };
  if (centre > mostLeadOhms) {
    return { because: 'too-large', ohms: centre, limitOhms: mostLeadOhms };
  }
  return null;
};

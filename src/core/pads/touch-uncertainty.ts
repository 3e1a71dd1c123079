// How well a short touch repeats on the same meter: the last digit, a little scatter, and the contact.
import type { MeasureFunction } from '../reading.js';

/** Share of the reading by which a meter and a short contact scatter. Common practice, no source. */
const scatterShare = 0.001;
/** Contact of a hand-held probe, in ohm and in volt. Common practice, no source. */
const contact: Readonly<Record<MeasureFunction, number>> = {
  resistance: 0.1,
  continuity: 0.1,
  diode: 0.0005,
  'dc-volts': 0.0005,
};

/**
 * Standard uncertainty of a short touch against another one by the same meter, in the function's unit. The
 * meter's own accuracy drops out, for the pads were learned with it.
 * @throws RangeError unless value and resolution are finite and the resolution is not negative.
 * @example touchUncertainty(4700, 1, 'resistance') // 4.71
 */
export const touchUncertainty = (
  value: number,
  resolution: number,
  measure: MeasureFunction,
): number => {
  if (!(Number.isFinite(value) && Number.isFinite(resolution) && resolution >= 0))
    throw new RangeError(`no uncertainty of a touch: ${value} in steps of ${resolution}`);
  return Math.hypot(scatterShare * value, resolution / Math.sqrt(12), contact[measure]);
};

// Residual volts: measured with the meter itself before it is set to resistance or diode. A meter in air shows
// nothing just as a discharged line does, so a person says where the probe is; the reading must hold still.
import type { Profile } from '../profile/profile-format.js';
import { isBlank, isFault, isOverload, type Reading } from '../reading.js';

/**
 * Volts, either polarity, at which a line counts as discharged. Common practice, no source: a tenth of a diode
 * drop, as much as expected values are allowed to differ, and far below what harms a meter or a chip.
 */
export const residualLimitV = 0.05;

export const isDischarged = (volts: number, limit = residualLimitV): boolean =>
  Math.abs(volts) <= limit;

export interface ResidualPlace {
  /** Null where the profile names no supply. */
  readonly line: string | null;
  readonly pin: string | null;
}

/** One place for each supply line, at its first pin, in walking order. */
export const residualPlaces = ({ connector, lines }: Profile): readonly ResidualPlace[] => {
  const places = new Map<string, ResidualPlace>();
  for (const { pin, line } of connector.pins) {
    if (lines[line]?.kind === 'supply' && !places.has(line)) places.set(line, { line, pin });
  }
  return places.size === 0 ? [{ line: null, pin: null }] : [...places.values()];
};

/** What the meter shows while it measures residual volts. */
export type Voltmeter =
  | { readonly shows: 'nothing' }
  | { readonly shows: 'other-function' }
  /** Hold, relative or min/max is on: what is shown is not what is there. */
  | { readonly shows: 'held' }
  /** More than the meter's range holds: charged, whatever it is. */
  | { readonly shows: 'overload' }
  | { readonly shows: 'volts'; readonly volts: number; readonly steady: boolean };

/** Readings looked at for holding still, and how far they may lie apart: a fifth of the limit. */
const held = 3;
const stillV = residualLimitV / 5;

/** From the last readings, oldest first; only those since the probe was placed. */
export const readVoltmeter = (readings: readonly Reading[]): Voltmeter => {
  const last = readings.at(-1);
  if (last === undefined || isFault(last) || isBlank(last)) return { shows: 'nothing' };
  if (last.function !== 'dc-volts') return { shows: 'other-function' };
  if (last.flags?.some((flag) => flag !== 'low-battery')) return { shows: 'held' };
  if (isOverload(last)) return { shows: 'overload' };
  const values = readings
    .slice(-held)
    .flatMap((one) => ('value' in one && one.function === 'dc-volts' ? [one.value] : []));
  const spread = Math.max(...values) - Math.min(...values);
  const most = Math.max(stillV, 0.02 * Math.abs(last.value));
  return {
    shows: 'volts',
    volts: values.reduce((far, one) => (Math.abs(one) > Math.abs(far) ? one : far), 0),
    steady: values.length === held && spread <= most,
  };
};

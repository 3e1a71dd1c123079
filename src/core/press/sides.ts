// On which side of the line's normal a reading lies: at it, on the open side or on the short side.
// A reading that is no evidence (blank, fault, hold, another function, residual charge) has no side.
import { isBlank, isFault, isOverload, type Reading } from '../reading.js';
import type { PressSetup } from './press-setup.js';

export const sides = ['normal', 'above', 'below'] as const;
export type Side = (typeof sides)[number];

export interface Band {
  readonly low: number;
  readonly high: number;
}

/** One reading reduced to its side; `value` is null for overload. */
export interface Seen {
  readonly t: number;
  readonly side: Side;
  readonly value: number | null;
}

/** A press asks whether the line is there, not whether it is good: so much beyond its limits is still near.
 * Common practice, no source. */
const near = 0.25;

/** @param band the line's normal, or what it read before the first press; null when neither is known. */
export const seeReading = (setup: PressSetup, band: Band | null, reading: Reading): Seen | null => {
  if (isFault(reading) || isBlank(reading) || isForeign(setup, reading)) return null;
  if (isOverload(reading)) return { t: reading.t, side: 'above', value: null };
  const { t, value } = reading;
  if (value < -setup.shortLimit) return null;
  return { t, side: sideOf(setup, band, value), value };
};

const isForeign = (setup: PressSetup, reading: Exclude<Reading, { fault: string }>): boolean =>
  (reading.function !== undefined && reading.function !== setup.function) ||
  (setup.polarity !== undefined &&
    reading.polarity !== undefined &&
    reading.polarity !== setup.polarity) ||
  (reading.flags ?? []).some((flag) => flag !== 'low-battery');

const sideOf = (setup: PressSetup, band: Band | null, value: number): Side => {
  if (setup.openLimit != null && value >= setup.openLimit) return 'above';
  if (setup.charges === true) return 'normal';
  if (band === null) return value <= setup.shortLimit ? 'below' : 'normal';
  if (value > band.high * (1 + near)) return 'above';
  return value < band.low * (1 - near) ? 'below' : 'normal';
};

// What a probe sees from where it stands on a route with certain faults: how far the line holds on both sides,
// whether it reaches the chip, which branches it meets, and whether anything shorts or alters it.
import { effectOf, type FaultMode, isIntermittent, type Load } from './fault-modes.js';
import type { Seat } from './suspect-model.js';

/** Where the probe stands: before the stop of that index, and on which pin if on one. */
export interface View {
  readonly gap: number;
  readonly pin: string | null;
}

export interface SeatedFault {
  readonly seat: Seat;
  readonly mode: FaultMode;
}

export interface Sight {
  /** The last open stop before the probe and the first one behind it; -1 and Infinity where none is. */
  readonly left: number;
  readonly right: number;
  readonly load: Load;
  /** A joint in sight answers to pressure, and may answer to the probe. */
  readonly intermittent: boolean;
}

/** Of several loads the one nearest to a short is what shows. */
const weight: Readonly<Record<Load, number>> = { none: 0, high: 1, low: 2, short: 3 };

/** The line holds up to its chip. */
export const isWhole = ({ right }: Sight): boolean => right === Number.POSITIVE_INFINITY;

/**
 * `presses` tells which suspects are being acted on. A branch hangs beside the line, so an open one is not
 * seen; the joint of another pin of the same line only matters when it shorts the line.
 */
export const sightOf = (
  { gap, pin }: View,
  faults: readonly SeatedFault[],
  presses: (suspect: number) => boolean,
): Sight => {
  let left = -1;
  let right = Number.POSITIVE_INFINITY;
  for (const { seat, mode } of faults) {
    if (seat.sits === 'branch' || !effectOf(mode, presses(seat.suspect)).open) continue;
    if (seat.sits === 'series') {
      if (seat.at < gap) left = Math.max(left, seat.at);
      else right = Math.min(right, seat.at);
    } else if (seat.pin === pin) {
      return { left: gap - 1, right: gap, load: 'none', intermittent: isIntermittent(mode) };
    }
  }
  let load: Load = 'none';
  let intermittent = false;
  for (const { seat, mode } of faults) {
    const ownEntry = seat.sits === 'entry' && seat.pin === pin;
    const inSight = seat.sits === 'entry' ? left < 0 : seat.at >= left && seat.at <= right;
    if (!inSight) continue;
    if (isIntermittent(mode) && (seat.sits !== 'entry' || ownEntry)) intermittent = true;
    if (seat.sits !== 'entry' && (seat.at === left || seat.at === right)) continue;
    const { load: own } = effectOf(mode, presses(seat.suspect));
    // A resistance in the line matters only between the probe and the chip.
    if (own === 'high' && !(seat.sits === 'entry' ? ownEntry : seat.at >= gap)) continue;
    if (weight[own] > weight[load]) load = own;
  }
  return { left, right, load, intermittent };
};

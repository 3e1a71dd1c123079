// Promises, for each class of lines, how the meter that reads differs from the meter the expected values were
// taken with: by a factor in resistance, by volts in diode test. Null where that cannot be told, or where there is
// nothing to tell. One class says nothing of another, and one group that is off is a fault and no shift. Beside it
// what may be believed of the shift before it can be told.
import { median } from '../numbers/median.js';
import type { Plan } from '../profile/plan.js';
import { type CommonDeparture, commonDeparture, type LineDeparture } from './common-departure.js';
import { isMeasured, type ReadPin } from './read-pin.js';
import { type Belief, believe, shiftProbability } from './shift-belief.js';
import type { ShiftClass } from './shift-class.js';
import { type TellingLine, tellingLines } from './telling-lines.js';

interface Told {
  /** Of the factor, or in volt. */
  readonly standardUncertainty: number;
  /** Pins and independent groups that agree. */
  readonly pins: number;
  readonly groups: number;
}

export interface ScaleShift extends Told {
  /** This meter reads so many times what is expected. */
  readonly scale: number;
}

export interface OffsetShift extends Told {
  /** This meter reads so many volts more than is expected. */
  readonly offset: number;
}

export type Shift = ScaleShift | OffsetShift;
export type Shifts = Readonly<Record<ShiftClass, Shift | null>>;

/** A shift that several groups have in common and that may yet be chance. */
export interface UntoldShift {
  readonly shift: Shift;
  /** Probability that there is one. */
  readonly probability: number;
}

export interface ShiftEstimate extends Shifts {
  /** Null where a shift is told, and where the lines read so far have nothing in common. */
  readonly untold: Readonly<Record<ShiftClass, UntoldShift | null>>;
  readonly beliefs: Readonly<Record<ShiftClass, Belief>>;
}

/** What no meter differs by, and a fault may: a factor's distance from 1, and volts. Common practice, no source. */
export const mostScale = 0.12;
export const mostOffset = 0.06;
/** Where the plan has so many groups of a class, so many must agree. */
const usualGroups = 3;
const fewestGroups = 2;

export const noShifts: Shifts = { signal: null, supply: null };

/**
 * @param pins one a planned pin, in walking order; what was not read yet is left out
 * @param known what an earlier walk told of the same meter and board; it holds until this one can tell for itself
 */
export const estimateShift = (
  pins: readonly ReadPin[],
  plan: Plan,
  known: Shifts = noShifts,
): ShiftEstimate => {
  const signal = departureOf('signal', pins, plan);
  const supply = departureOf('supply', pins, plan);
  return {
    signal: toldShift(signal, plan) ?? known.signal,
    supply: toldShift(supply, plan) ?? known.supply,
    untold: {
      signal: known.signal === null ? untoldShift(signal, plan) : null,
      supply: known.supply === null ? untoldShift(supply, plan) : null,
    },
    beliefs: { signal: believe(signal, plan.function), supply: believe(supply, plan.function) },
  };
};

const departureOf = (
  kind: ShiftClass,
  pins: readonly ReadPin[],
  plan: Plan,
): CommonDeparture | null => {
  if (plan.function === 'dc-volts') return null;
  const lines = tellingLines(plan)[kind];
  const groups = new Set(lines.map(({ group }) => group)).size;
  return commonDeparture(
    departures(lines, pins, plan.function === 'diode'),
    Math.max(fewestGroups, Math.min(usualGroups, groups)),
  );
};

const toldShift = (common: CommonDeparture | null, plan: Plan): Shift | null => {
  if (common === null || !common.isCommon) return null;
  const shift = shiftOf(common, plan);
  const isThinkable =
    'scale' in shift
      ? Math.abs(shift.scale - 1) <= mostScale
      : Math.abs(shift.offset) <= mostOffset;
  return isThinkable ? shift : null;
};

/** Limits that hold for certain would call a good line bad, and a bad one good, as long as a shift is not certain. */
const untoldShift = (common: CommonDeparture | null, plan: Plan): UntoldShift | null => {
  if (common === null || common.isCommon || !common.isShared) return null;
  const shift = shiftOf({ ...common, ...believe(common, plan.function) }, plan);
  return { shift, probability: shiftProbability(common, plan.function) };
};

const shiftOf = (
  { departure, standardUncertainty, pins, groups }: CommonDeparture,
  plan: Plan,
): Shift => {
  const told = { pins, groups };
  if (plan.function === 'diode') return { offset: departure, standardUncertainty, ...told };
  const scale = Math.exp(departure);
  return { scale, standardUncertainty: scale * standardUncertainty, ...told };
};

/** Every line that reads near what is expected, by the middle one of its pins. */
const departures = (
  lines: readonly TellingLine[],
  pins: readonly ReadPin[],
  byOffset: boolean,
): readonly LineDeparture[] => {
  const found: LineDeparture[] = [];
  for (const { group, expected, places } of lines) {
    const { nominal, low, high } = expected;
    const seen: number[] = [];
    for (const place of places) {
      const read = pins[place];
      if (!isMeasured(read) || !isNear(expected, read.value, byOffset)) continue;
      seen.push(byOffset ? read.value - nominal : Math.log(read.value / nominal));
    }
    if (seen.length === 0) continue;
    const tolerance = (high - low) / 2 / (byOffset ? 1 : nominal);
    found.push({ group, departure: median(seen), tolerance, pins: seen.length });
  }
  return found;
};

/** Anything further off is a fault under any shift that is believed. */
const isNear = (
  { low, high }: TellingLine['expected'],
  value: number,
  byOffset: boolean,
): boolean => {
  if (byOffset) return value >= low - mostOffset && value <= high + mostOffset && value > 0;
  return value > 0 && value >= low * (1 - mostScale) && value <= high * (1 + mostScale);
};

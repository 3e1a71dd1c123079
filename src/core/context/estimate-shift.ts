// Promises, for each class of lines, how the meter that reads differs from the meter the expected values were
// taken with: by a factor in resistance, by volts in diode test. Null where that cannot be told, or where there is
// nothing to tell. One class says nothing of another, and one group that is off is a fault and no shift. Beside it
// what may be believed of the shift before it can be told.
import { median } from '../numbers/median.js';
import type { Plan, PlannedPin } from '../profile/plan.js';
import { type CommonDeparture, commonDeparture, type LineDeparture } from './common-departure.js';
import { isMeasured, type ReadPin } from './read-pin.js';
import { type Belief, believe, shiftProbability } from './shift-belief.js';
import type { ShiftClass } from './shift-class.js';

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
/** A line whose tolerance is wider tells too little of the meter. */
const widestTolerance = 0.35;
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
  const usable = plan.pins.filter(expectsValue).filter((pin) => pin.kind === kind);
  const known = new Set(usable.map(independentGroup)).size;
  const lines = departures(usable, pins, plan.function === 'diode');
  return commonDeparture(lines, Math.max(fewestGroups, Math.min(usualGroups, known)));
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

interface ExpectingPin extends PlannedPin {
  readonly expected: { readonly nominal: number; readonly low: number; readonly high: number };
}

const expectsValue = (pin: PlannedPin): pin is ExpectingPin => {
  const { expected, fromDonor } = pin;
  // How this meter reads beside itself tells nothing of it.
  if (fromDonor !== undefined) return false;
  if (expected === null || expected === 'overload' || !(expected.nominal > 0)) return false;
  return (expected.high - expected.low) / 2 / expected.nominal <= widestTolerance;
};

/** Lines of one group, or of one pair, or of one name, share their parts and so their departures. */
const independentGroup = ({ group, mate, line }: PlannedPin): string => {
  if (group !== undefined) return `group ${group}`;
  return mate === undefined ? `line ${line}` : `pair ${[line, mate].sort().join(' ')}`;
};

/** Every line that reads near what is expected, once, by the middle one of its pins. */
const departures = (
  usable: readonly ExpectingPin[],
  pins: readonly ReadPin[],
  byOffset: boolean,
): readonly LineDeparture[] => {
  const lines = new Map<string, { pin: ExpectingPin; seen: number[] }>();
  for (const pin of usable) {
    const read = pins[pin.index];
    if (!isMeasured(read) || !isNear(pin, read.value, byOffset)) continue;
    const line = lines.get(pin.line) ?? { pin, seen: [] };
    const { nominal } = pin.expected;
    line.seen.push(byOffset ? read.value - nominal : Math.log(read.value / nominal));
    lines.set(pin.line, line);
  }
  return [...lines.values()].map(({ pin, seen }) => {
    const { nominal, low, high } = pin.expected;
    return {
      group: independentGroup(pin),
      departure: median(seen),
      tolerance: (high - low) / 2 / (byOffset ? 1 : nominal),
      pins: seen.length,
    };
  });
};

/** Anything further off is a fault under any shift that is believed. */
const isNear = ({ expected }: ExpectingPin, value: number, byOffset: boolean): boolean => {
  const { low, high } = expected;
  if (byOffset) return value >= low - mostOffset && value <= high + mostOffset && value > 0;
  return value > 0 && value >= low * (1 - mostScale) && value <= high * (1 + mostScale);
};

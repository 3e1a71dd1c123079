// Proposes resistors for reply pads: preferred values (IEC 60063) far from everything the profile may read and from
// each other, given the meter's accuracy. Refuses, with the reason, where no values do.

import { inferResolution, rowAt } from '../measure/accuracy-row.js';
import { nominalTolerance } from '../numbers/preferred-values.js';
import { preferredValuesBetween } from '../numbers/preferred-values-between.js';
import { planWalk } from '../profile/plan.js';
import type { Profile } from '../profile/profile-format.js';
import type { MeasureFunction, Polarity } from '../reading.js';
import type { AccuracyStatement } from '../session-events.js';
import { type Occupied, occupiedBands } from './occupied-bands.js';
import type { PadCommand } from './pad.js';
import { apart, type Choice, spreadValues } from './spread-values.js';

export interface PadMeasure {
  readonly function: MeasureFunction;
  readonly polarity: Polarity;
  /** Full scale of the fixed range the walk asks for, in the function's unit. */
  readonly range?: number | undefined;
  /** What the diode test drives through the pad, and where it shows overload. */
  readonly diode?: { readonly testAmps: number; readonly overloadVolts: number };
}

export interface PlannedPad {
  readonly command: PadCommand;
  readonly ohms: number;
  /** What it may read before it is learned, in the function's unit. */
  readonly low: number;
  readonly high: number;
}

export type PadPlan =
  | {
      readonly planned: true;
      readonly pads: readonly PlannedPad[];
      /** Every pad is at least this share away from the next and from what the profile may read. */
      readonly distance: number;
      /** What to know beside the values, in words. */
      readonly notes: readonly string[];
    }
  | {
      readonly planned: false;
      readonly reason: string;
      /** How many pads would do. */
      readonly fits: number;
    };

export interface PadOptions {
  readonly series?: keyof typeof nominalTolerance;
}

/** Resistors below are close to contact and leads, above are slow to range and leak. Common practice, no source. */
const leastOhms = 47;
const mostOhms = 470_000;
/** Pads nearer than this would be taken for each other on a bad contact (design decision). */
const leastDistance = 0.05;
/** How far a meter's diode test current is from what it is said to be. Common practice, no source. */
const currentSpread = 0.1;
/** A current source falls short near its overload. Common practice, no source. */
const usableShare = 0.8;

export const planPads = (
  profile: Profile,
  measure: PadMeasure,
  accuracy: AccuracyStatement,
  commands: readonly PadCommand[],
  { series = 'E24' }: PadOptions = {},
): PadPlan => {
  const refused = refusal(measure, commands);
  if (refused !== null) return { planned: false, reason: refused, fits: 0 };
  const occupied = occupiedBands(profile, measure);
  const isOwn = measure.function === profile.measure.function;
  const opens = planWalk(profile, measure).pins.flatMap(({ openLimit }) =>
    isOwn && openLimit !== null ? [openLimit] : [],
  );
  const choices = preferredValuesBetween(leastOhms, mostOhms, series)
    .map((ohms) =>
      choiceOf(ohms, { measure, accuracy, tolerance: nominalTolerance[series], occupied }),
    )
    .filter(({ high }) => high < Math.min(overloadAt(measure), ...opens));
  for (let count = commands.length; count > 0; count -= 1) {
    const spread = spreadValues(choices, count);
    const distance = spread === null ? 0 : Math.expm1(spread.distance);
    if (spread === null || distance < leastDistance) continue;
    if (count < commands.length)
      return { planned: false, reason: tooFew(count, measure), fits: count };
    const pads = spread.chosen.map(
      ({ ohms, low, high }, at): PlannedPad => ({
        command: commands[at] as PadCommand,
        ohms,
        low,
        high,
      }),
    );
    return { planned: true, pads, distance, notes: notesOn(measure) };
  }
  return { planned: false, reason: tooFew(0, measure), fits: 0 };
};

const refusal = (measure: PadMeasure, commands: readonly PadCommand[]): string | null => {
  if (commands.length === 0) return 'no command was asked for; name at least one';
  if (new Set(commands).size < commands.length) return 'a command was named twice; name each once';
  if (measure.function === 'dc-volts')
    return 'a resistor shows nothing in volts; walk in resistance to use pads';
  if (measure.function === 'continuity')
    return 'continuity shows low ohms only; walk in resistance to use pads';
  if (measure.function === 'diode' && measure.diode === undefined)
    return (
      'in the diode test a resistor reads the test current times its ohms, and this current is not known; ' +
      'read a 1 kΩ resistor in the diode test: its volts are the current in milliamperes'
    );
  return null;
};

const tooFew = (fits: number, measure: PadMeasure): string => {
  const window =
    measure.function === 'diode' && measure.diode !== undefined
      ? ` under the overload of ${measure.diode.overloadVolts} V in the diode test`
      : '';
  return fits === 0
    ? `no value keeps clear of what this profile reads${window}; use keys or a pedal`
    : `only ${fits} ${fits === 1 ? 'value keeps' : 'values keep'} clear of each other and of what this profile reads${window}; ` +
        'name fewer commands or take a finer series';
};

const notesOn = ({ function: measured, range, diode }: PadMeasure): string[] => {
  if (measured === 'diode' && diode !== undefined)
    return [
      `in the diode test each pad reads its ohms times ${1000 * diode.testAmps} mA, in volts: learn the pads in the same function`,
    ];
  if (range !== undefined) return [];
  return [
    'no fixed range: a meter that ranges by itself may take 1 to 3 s from overload, longer than a short touch',
  ];
};

const overloadAt = ({ function: measured, range, diode }: PadMeasure): number => {
  const full = range ?? Number.POSITIVE_INFINITY;
  return measured === 'diode' && diode !== undefined
    ? Math.min(full, usableShare * diode.overloadVolts)
    : full;
};

interface PadChoice extends Choice {
  readonly ohms: number;
}

/** What a resistor of this nominal value may read, and how far that is from everything else. */
const choiceOf = (
  ohms: number,
  around: {
    readonly measure: PadMeasure;
    readonly accuracy: AccuracyStatement;
    readonly tolerance: number;
    readonly occupied: readonly Occupied[];
  },
): PadChoice => {
  const { measure, accuracy, tolerance, occupied } = around;
  const inDiode = measure.function === 'diode' && measure.diode !== undefined;
  const reads = inDiode ? ohms * (measure.diode?.testAmps ?? 0) : ohms;
  const { percent, counts } = rowAt(accuracy, reads, undefined);
  const step = inferResolution(accuracy, measure.function, reads, undefined);
  const halfWidth = (percent / 100) * reads + counts * step + tolerance * reads;
  const [low, high] = [Math.max(0, reads - halfWidth), reads + halfWidth];
  // The test current is the same for all pads, so its spread only matters against the board.
  const spread = inDiode ? currentSpread : 0;
  const wide = { low: low * (1 - spread), high: high * (1 + spread) };
  const clearance = Math.min(...occupied.map((band) => apart(wide, band)));
  return { ohms, low, high, clearance };
};

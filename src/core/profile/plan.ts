// The walk as the profile lays it out for one function and polarity: each pin in order with all that its
// verdict needs, so that nothing downstream looks anything up by name.

import { type MeasureFunction, measureFunctions, type Polarity, siUnit } from '../reading.js';
import type { ExpectedBounds } from '../verdict.js';
import { besideDonor, type DonorWay } from './donor.js';
import type { Expectation, Profile, ProfileLine } from './profile-format.js';

/** Without a line's own limit, what counts as shorted. The ohm figure is the profile format's. */
const defaultShort: Readonly<Record<MeasureFunction, number>> = {
  resistance: 5,
  continuity: 5,
  diode: 0.03,
  'dc-volts': 0,
};

export interface PlannedPin {
  readonly index: number;
  readonly pin: string;
  readonly line: string;
  readonly kind: ProfileLine['kind'];
  readonly group: string | undefined;
  readonly mate: string | undefined;
  readonly row: number | undefined;
  readonly expected: ExpectedBounds;
  /** At or under this the line counts as shorted, in the function's unit. */
  readonly shortLimit: number;
  /** At or over this the line counts as open; null where only overload does. */
  readonly openLimit: number | null;
  /** Bulk capacitance: seconds of charging are normal. */
  readonly charges: boolean;
  /** Another function in which the profile knows what the line reads. */
  readonly elsewhere?: MeasureFunction;
  /** A good board's pin, read before the patient's; absent for the patient's own. */
  readonly board?: 'donor';
  /** What is expected was read on the donor with this meter, to within this, in the function's unit. */
  readonly fromDonor?: {
    readonly standardUncertainty: number;
    /** The profile expects nothing here: which board is at fault where they differ cannot be told. */
    readonly alone?: true;
  };
}

/** What an event calls a pin by. */
export const namesOf = ({
  pin,
  line,
  board,
}: PlannedPin): Pick<PlannedPin, 'pin' | 'line' | 'board'> => ({
  pin,
  line,
  ...(board === undefined ? {} : { board }),
});

export interface Plan {
  readonly function: MeasureFunction;
  readonly polarity: Polarity;
  readonly pins: readonly PlannedPin[];
}

/** @throws RangeError for a pin whose line the profile does not define (a checked profile never has one). */
export const planWalk = (
  profile: Profile,
  measure: { function: MeasureFunction; polarity: Polarity } = profile.measure,
  only?: readonly string[],
  donor?: DonorWay,
): Plan => {
  const pins = planPins(profile, measure, only);
  return {
    function: measure.function,
    polarity: measure.polarity,
    pins: donor === undefined ? pins : besideDonor(pins),
  };
};

const planPins = (
  profile: Profile,
  measure: { function: MeasureFunction; polarity: Polarity },
  only: readonly string[] | undefined,
): readonly PlannedPin[] =>
  walkedPins(profile, only).map(({ pin, line, row }, index) => {
    const found = Object.hasOwn(profile.lines, line) ? profile.lines[line] : undefined;
    if (found === undefined) throw new RangeError(`pin ${pin}: line ${line} is not in the profile`);
    const limits = limitsHold(profile.measure.function, measure.function)
      ? found.limits
      : undefined;
    const elsewhere = measureFunctions.find(
      (other) => other !== measure.function && typeof found.expect?.[other] === 'object',
    );
    const shortLimit = limits?.short ?? defaultShort[measure.function];
    return {
      index,
      pin,
      line,
      kind: found.kind,
      group: found.group,
      mate: found.mate,
      row,
      expected: boundsOf(found, measure, shortLimit),
      shortLimit,
      openLimit: limits?.open ?? null,
      charges: found.charges ?? found.kind === 'supply',
      ...(elsewhere === undefined ? {} : { elsewhere }),
    };
  });

/** Has most of what is not ground no expected value? Then little tells one pin from another. */
export const expectsLittle = ({ pins }: Pick<Plan, 'pins'>): boolean => {
  const lines = pins.filter(({ kind }) => kind !== 'ground');
  return 2 * lines.filter(({ expected }) => expected === null).length > lines.length;
};

/** The pins walked, in the profile's order: all of them, or those that are named. */
export const walkedPins = (
  profile: Profile,
  only: readonly string[] | undefined,
): Profile['connector']['pins'] =>
  only === undefined
    ? profile.connector.pins
    : profile.connector.pins.filter(({ pin }) => only.includes(pin));

/** A line's own limits are given for the function that its profile measures; continuity is in ohm as well. */
const limitsHold = (own: MeasureFunction, asked: MeasureFunction): boolean =>
  own === asked || (siUnit(own) === 'Ω' && siUnit(asked) === 'Ω');

const boundsOf = (
  line: ProfileLine,
  measure: { function: MeasureFunction; polarity: Polarity },
  shortLimit: number,
): ExpectedBounds => {
  const expectation = line.expect?.[measure.function];
  if (expectation !== undefined) return boundsFor(expectation, measure.polarity);
  if (line.kind === 'ground') return { nominal: 0, low: 0, high: shortLimit };
  if (line.kind === 'unused') return 'overload';
  return null;
};

/** An expected value holds for its own polarity only; without a fitting one there is nothing to compare. */
const boundsFor = (expectation: Expectation, polarity: Polarity): ExpectedBounds => {
  if (expectation === 'overload') return 'overload';
  if (expectation.polarity !== undefined && expectation.polarity !== polarity) return null;
  const { nominal, tolerance } = expectation;
  return { nominal, low: nominal * (1 - tolerance), high: nominal * (1 + tolerance) };
};

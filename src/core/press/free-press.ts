// A press test without pace: what the line did while the technician pressed when they liked. Works on stored
// readings as on live ones. It reports, and does not judge: nothing here is held against chance except marks.
import { type Act, type Input, inputTime } from '../inputs.js';
import { median } from '../numbers/median.js';
import { medianAbsoluteDeviation } from '../numbers/median-absolute-deviation.js';
import { comparePresses, type MarkedPresses, markedSpans } from './marked-presses.js';
import type { PressSetup } from './press-setup.js';
import { type Band, type Seen, seeReading } from './sides.js';
import { type Segment, segmentTrace } from './two-states.js';

/** A time away from where the line rests. */
export interface Excursion {
  readonly fromS: number;
  readonly toS: number;
  readonly dwellS: number;
  /** Median value, in the function's unit; null where most readings are overload. */
  readonly value: number | null;
}

export interface FreePress {
  /** The state held longest: the line is there, or it is not; null without readings. */
  readonly rests: 'contact' | 'none' | null;
  readonly segments: readonly Segment[];
  /** Where the line rests open these are its returns. One that begins or ends with the record counts. */
  readonly excursions: readonly Excursion[];
  readonly medianDwellS: number | null;
  /** At least three excursions, and their values agree. */
  readonly repeats: boolean;
  /** Presses marked with a key or pedal, held against the times between; null without marks. */
  readonly marked: MarkedPresses | null;
}

const leastRepeats = 3;
/** Two contacts of one joint agree within this share. Common practice, no source. */
const agreementShare = 0.05;

export const freePress = (setup: PressSetup, inputs: readonly Input[]): FreePress => {
  const readings = inputs.flatMap((input) => (input.kind === 'reading' ? [input.reading] : []));
  const see = (band: Band | null): Seen[] =>
    readings.flatMap((reading) => seeReading(setup, band, reading) ?? []);
  const seen = see(setup.normal ?? bandOf(see(null)));
  const segments = segmentTrace(seen.map(({ t, side }) => ({ t, contact: side === 'normal' })));
  const rests = restOf(segments);
  const excursions = segments
    .filter(({ contact }) => rests !== null && contact !== (rests === 'contact'))
    .map((segment) => excursionOf(segment, seen));
  const acts = inputs.flatMap((input) =>
    input.kind === 'act' ? [markOf(input.t, input.act)] : [],
  );
  const endS = inputs.length === 0 ? 0 : inputTime(inputs[inputs.length - 1] as Input);
  const spans = markedSpans(acts, endS);
  return {
    rests,
    segments,
    excursions,
    medianDwellS: excursions.length === 0 ? null : median(excursions.map(({ dwellS }) => dwellS)),
    repeats: excursions.length >= leastRepeats && valuesAgree(excursions, setup.shortLimit / 2),
    marked: rests === null ? null : comparePresses(spans, segments, rests),
  };
};

const markOf = (t: number, { act }: Act): { t: number; act: Act['act'] } => ({ t, act });

/** Learned where the profile knows no normal: the middle of the values, as wide as they scatter. */
const bandOf = (seen: readonly Seen[]): Band | null => {
  const values = seen.flatMap(({ side, value }) =>
    side === 'normal' && value !== null ? [value] : [],
  );
  if (values.length === 0) return null;
  const middle = median(values);
  // 1.4826 makes the median absolute deviation a standard deviation for normal noise.
  const scatter = 3 * 1.4826 * medianAbsoluteDeviation(values);
  const half = Math.max(0.1 * middle, scatter);
  return { low: middle - half, high: middle + half };
};

const restOf = (segments: readonly Segment[]): FreePress['rests'] => {
  const held = (contact: boolean): number =>
    segments
      .filter((segment) => segment.contact === contact)
      .reduce((sum, { fromS, toS }) => sum + toS - fromS, 0);
  if (segments.length === 0) return null;
  return held(true) > held(false) ? 'contact' : 'none';
};

const excursionOf = ({ fromS, toS, contact }: Segment, seen: readonly Seen[]): Excursion => {
  const own = seen.filter(
    ({ t, side }) => t >= fromS && t <= toS && (side === 'normal') === contact,
  );
  const values = own.flatMap(({ value }) => (value === null ? [] : [value]));
  return {
    fromS,
    toS,
    dwellS: toS - fromS,
    value: 2 * values.length > own.length ? median(values) : null,
  };
};

const valuesAgree = (excursions: readonly Excursion[], floor: number): boolean => {
  const values = excursions.flatMap(({ value }) => (value === null ? [] : [value]));
  if (values.length === 0) return true;
  if (values.length < excursions.length) return false;
  const middle = median(values);
  const most = agreementShare * Math.abs(middle) + floor;
  return values.every((value) => Math.abs(value - middle) <= most);
};

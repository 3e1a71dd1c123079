// What a meter said at one moment, in SI base units. Never NaN, never Infinity: a frame that is not a
// number is an overload, a blank or a fault, and says so.

export const measureFunctions = ['resistance', 'diode', 'continuity', 'dc-volts'] as const;
export type MeasureFunction = (typeof measureFunctions)[number];

/** Which lead walks the connector; the other one stays on ground. */
export const polarities = ['red-walks', 'black-walks'] as const;
export type Polarity = (typeof polarities)[number];

export const readingFlags = ['hold', 'relative', 'minmax', 'low-battery'] as const;
export type ReadingFlag = (typeof readingFlags)[number];

export interface ReadingContext {
  /** Seconds since the source's own start, never falling. */
  readonly t: number;
  readonly function: MeasureFunction;
  /** Full scale of the range in use, in the function's SI unit. */
  readonly range?: number;
  /** One step of the last displayed digit, in the function's SI unit. */
  readonly resolution?: number;
  readonly polarity?: Polarity;
  readonly flags?: readonly ReadingFlag[];
}

export interface ValueReading extends ReadingContext {
  /** Ohm or volt. Always finite. */
  readonly value: number;
}

export interface OverloadReading extends ReadingContext {
  readonly overload: true;
}

/** The display showed nothing (a range change under way, a blank screen). */
export interface BlankReading extends Partial<ReadingContext> {
  readonly t: number;
  readonly blank: true;
}

/** A frame that could not be read; the cleaned raw text is kept, never a number. */
export interface FaultReading {
  readonly t: number;
  readonly fault: string;
}

export type Reading = ValueReading | OverloadReading | BlankReading | FaultReading;

export const isValue = (reading: Reading): reading is ValueReading => 'value' in reading;
export const isOverload = (reading: Reading): reading is OverloadReading => 'overload' in reading;
export const isBlank = (reading: Reading): reading is BlankReading => 'blank' in reading;
export const isFault = (reading: Reading): reading is FaultReading => 'fault' in reading;

/** The unit in which a function's readings are stored. */
export const siUnit = (measure: MeasureFunction): 'Ω' | 'V' =>
  measure === 'resistance' || measure === 'continuity' ? 'Ω' : 'V';

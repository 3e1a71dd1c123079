// The fast way to trust a stored reading. A session can hold a million of them, so this is written by hand
// where every other event goes through its schema; it accepts exactly what `Reading` describes.
import type { Numbered, ReadingTaken } from './events.js';
import { measureFunctions, polarities, readingFlags } from './reading.js';

export type Fields = Readonly<Record<string, unknown>>;

interface Draft {
  readonly seq: unknown;
  readonly t: unknown;
  readonly type: 'reading-taken';
  function?: unknown;
  value?: unknown;
  overload?: unknown;
  blank?: unknown;
  fault?: unknown;
  range?: unknown;
  resolution?: unknown;
  polarity?: unknown;
  flags?: unknown;
}

const functions: ReadonlySet<unknown> = new Set(measureFunctions);
const leads: ReadonlySet<unknown> = new Set(polarities);
const flags: ReadonlySet<unknown> = new Set(readingFlags);

const isPositive = (value: unknown): boolean =>
  typeof value === 'number' && value > 0 && value < Infinity;

/**
 * The reading in `fields`, whose `seq` and `t` are already proven numbers; or, in words, why it is none.
 * Keys that a later version may have added are passed over and handed to `unknownKey`.
 */
export const readReadingEvent = (
  fields: Fields,
  unknownKey: (key: string) => void,
): Numbered<ReadingTaken> | string => {
  const event: Draft = { seq: fields.seq, t: fields.t, type: 'reading-taken' };
  let outcomes = 0;
  for (const key in fields) {
    switch (key) {
      case 'seq':
      case 't':
      case 'type':
      case 'prev':
        break;
      case 'function':
        event.function = fields.function;
        if (!functions.has(event.function)) return '"function" is not a known measuring function';
        break;
      case 'value':
        event.value = fields.value;
        if (!Number.isFinite(event.value)) return '"value" is not a number';
        outcomes += 1;
        break;
      case 'overload':
        event.overload = fields.overload;
        if (event.overload !== true) return '"overload" can only be true';
        outcomes += 1;
        break;
      case 'blank':
        event.blank = fields.blank;
        if (event.blank !== true) return '"blank" can only be true';
        outcomes += 1;
        break;
      case 'fault':
        event.fault = fields.fault;
        if (typeof event.fault !== 'string') return '"fault" is not a text';
        outcomes += 1;
        break;
      case 'range':
        event.range = fields.range;
        if (!isPositive(event.range)) return '"range" is not a positive number';
        break;
      case 'resolution':
        event.resolution = fields.resolution;
        if (!isPositive(event.resolution)) return '"resolution" is not a positive number';
        break;
      case 'polarity':
        event.polarity = fields.polarity;
        if (!leads.has(event.polarity)) return '"polarity" is not known';
        break;
      case 'flags':
        event.flags = fields.flags;
        if (!isFlagList(event.flags)) return '"flags" is not a list of known flags';
        break;
      default:
        unknownKey(key);
    }
  }
  if (outcomes !== 1) return 'a reading has exactly one of "value", "overload", "blank", "fault"';
  const needsFunction = event.fault === undefined && event.blank === undefined;
  if (needsFunction && event.function === undefined) return '"function" is missing';
  return event as Numbered<ReadingTaken>;
};

const isFlagList = (value: unknown): boolean =>
  Array.isArray(value) && value.every((flag) => flags.has(flag));

// The fast way to trust a stored reading. A session can hold a million of them, so this is written by hand
// where every other event goes through its schema; it accepts exactly what `Reading` describes.
import type { Numbered, ReadingTaken } from './events.js';
import { measureFunctions, polarities, readingFlags } from './reading.js';

export type Fields = Readonly<Record<string, unknown>>;

const functions: ReadonlySet<unknown> = new Set(measureFunctions);
const leads: ReadonlySet<unknown> = new Set(polarities);
const flags: ReadonlySet<unknown> = new Set(readingFlags);

/**
 * The reading in `fields`, whose `seq` and `t` are already proven numbers; or, in words, why it is none.
 * Keys that a later version may have added are passed over and handed to `unknownKey`.
 */
export const readReadingEvent = (
  fields: Fields,
  unknownKey: (key: string) => void,
): Numbered<ReadingTaken> | string => {
  const event: Record<string, unknown> = { seq: fields.seq, t: fields.t, type: 'reading-taken' };
  let outcomes = 0;
  for (const key in fields) {
    const value = fields[key];
    switch (key) {
      case 'seq':
      case 't':
      case 'type':
      case 'prev':
        continue;
      case 'function':
        if (!functions.has(value)) return '"function" is not a known measuring function';
        break;
      case 'value':
        if (typeof value !== 'number' || !Number.isFinite(value)) return '"value" is not a number';
        outcomes += 1;
        break;
      case 'overload':
      case 'blank':
        if (value !== true) return `"${key}" can only be true`;
        outcomes += 1;
        break;
      case 'fault':
        if (typeof value !== 'string') return '"fault" is not a text';
        outcomes += 1;
        break;
      case 'range':
      case 'resolution':
        if (typeof value !== 'number' || !(value > 0 && value < Infinity)) {
          return `"${key}" is not a positive number`;
        }
        break;
      case 'polarity':
        if (!leads.has(value)) return '"polarity" is not known';
        break;
      case 'flags':
        if (!Array.isArray(value) || !value.every((flag) => flags.has(flag))) {
          return '"flags" is not a list of known flags';
        }
        break;
      default:
        unknownKey(key);
        continue;
    }
    event[key] = value;
  }
  if (outcomes !== 1) return 'a reading has exactly one of "value", "overload", "blank", "fault"';
  const needsFunction = event.fault === undefined && event.blank === undefined;
  if (needsFunction && event.function === undefined) return '"function" is missing';
  return event as unknown as Numbered<ReadingTaken>;
};

// The reading log: one JSON object a line, either a reading or a mark between readings. Strict: whatever is
// not one of the known shapes is refused with its line number, and time never falls.

import { type CueName, type Input, inputTime } from './inputs.js';
import { jsonLine } from './json-line.js';
import { quoted } from './problems.js';
import {
  isFault,
  measureFunctions,
  polarities,
  type Reading,
  type ReadingFlag,
  readingFlags,
} from './reading.js';

export class LogError extends Error {
  override readonly name = 'LogError';
  constructor(
    readonly line: number,
    says: string,
  ) {
    super(`line ${line}: ${says}`);
  }
}

/** The technician's own acts that a log can hold. */
export const markedActs = [
  'open',
  'back',
  'next',
  'skip',
  'retake',
  'pressing',
  'released',
] as const;

const marks: ReadonlyMap<string, (t: number) => Input> = new Map([
  ...(['press', 'release'] as const).map(
    (cue) => [cue, (t: number): Input => ({ kind: 'cue', t, cue })] as const,
  ),
  ...markedActs.map(
    (act) => [act, (t: number): Input => ({ kind: 'act', t, act: { act } })] as const,
  ),
]);

const functions: ReadonlySet<unknown> = new Set(measureFunctions);
const leads: ReadonlySet<unknown> = new Set(polarities);
const flags: ReadonlySet<unknown> = new Set(readingFlags);

type Fields = Record<string, unknown>;

/** Reads one line. @throws LogError naming the line, what is wrong with it and what would be right. */
export const parseLogLine = (text: string, lineNumber: number): Input => {
  let fields: unknown;
  try {
    fields = JSON.parse(text);
  } catch {
    throw new LogError(
      lineNumber,
      'not JSON; each line holds one object such as {"t":0.4,"function":"resistance","value":389.6}',
    );
  }
  if (typeof fields !== 'object' || fields === null || Array.isArray(fields)) {
    throw new LogError(lineNumber, 'not a JSON object');
  }
  return readFields(fields as Fields, (says) => new LogError(lineNumber, says));
};

/** A parser that also holds time to its promise. Lines are numbered from 1 in the order given. */
export const createLogParser = (): ((text: string) => Input) => {
  let lineNumber = 0;
  let latest = Number.NEGATIVE_INFINITY;
  return (text) => {
    lineNumber += 1;
    const input = parseLogLine(text, lineNumber);
    const t = inputTime(input);
    if (t < latest) {
      throw new LogError(
        lineNumber,
        `time falls from ${latest} to ${t}; put the lines in order of "t"`,
      );
    }
    latest = t;
    return input;
  };
};

/** The line a mark takes in a reading log. */
export const formatLogMark = (t: number, mark: (typeof markedActs)[number] | CueName): string =>
  JSON.stringify({ t, mark });

/** The line a reading takes in a reading log. */
export const formatLogReading = (reading: Reading): string =>
  jsonLine(isFault(reading) ? { t: reading.t, fault: reading.fault } : reading);

const readFields = (fields: Fields, wrong: (says: string) => LogError): Input => {
  const t = fields.t;
  if (typeof t !== 'number' || !Number.isFinite(t)) throw wrong('"t" must be a number of seconds');
  if ('mark' in fields) return readMark(fields, t, wrong);
  return { kind: 'reading', reading: readReading(fields, t, wrong) };
};

const readMark = (fields: Fields, t: number, wrong: (says: string) => LogError): Input => {
  for (const key in fields) {
    if (key !== 't' && key !== 'mark')
      throw wrong(`a mark has only "t" and "mark", not ${quoted(key)}`);
  }
  const make = typeof fields.mark === 'string' ? marks.get(fields.mark) : undefined;
  if (make === undefined) throw wrong(`unknown mark; known are ${[...marks.keys()].join(', ')}`);
  return make(t);
};

const readReading = (fields: Fields, t: number, wrong: (says: string) => LogError): Reading => {
  let outcomes = 0;
  for (const key in fields) {
    const value = fields[key];
    switch (key) {
      case 't':
        break;
      case 'function':
        if (!functions.has(value))
          throw wrong(`"function" must be one of ${measureFunctions.join(', ')}`);
        break;
      case 'value':
        if (typeof value !== 'number' || !Number.isFinite(value))
          throw wrong('"value" must be a number in ohm or volt');
        outcomes += 1;
        break;
      case 'overload':
      case 'blank':
        if (value !== true) throw wrong(`"${key}" can only be true; leave it out otherwise`);
        outcomes += 1;
        break;
      case 'fault':
        if (typeof value !== 'string' && value !== true)
          throw wrong('"fault" must be true or the text that could not be read');
        outcomes += 1;
        break;
      case 'range':
      case 'resolution':
        if (typeof value !== 'number' || !(value > 0) || !Number.isFinite(value))
          throw wrong(`"${key}" must be a positive number`);
        break;
      case 'polarity':
        if (!leads.has(value)) throw wrong(`"polarity" must be one of ${polarities.join(', ')}`);
        break;
      case 'flags':
        if (!Array.isArray(value) || !value.every((flag) => flags.has(flag))) {
          throw wrong(`"flags" must be a list of ${readingFlags.join(', ')}`);
        }
        break;
      default:
        throw wrong(`unknown key ${quoted(key)}`);
    }
  }
  if (outcomes !== 1) {
    throw wrong(
      'a reading has exactly one of "value", "overload", "blank", "fault" (or the line is a "mark")',
    );
  }
  if ('fault' in fields) return { t, fault: typeof fields.fault === 'string' ? fields.fault : '' };
  if (!('function' in fields) && !('blank' in fields)) {
    throw wrong(`"function" is missing; it must be one of ${measureFunctions.join(', ')}`);
  }
  return fields as unknown as Reading & { flags?: readonly ReadingFlag[] };
};

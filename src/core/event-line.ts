// One event as one line of the session file: `{"seq":n,"t":s,"type":"…",…,"prev":"16 hex digits"}`. What is
// written can always be read back. Reading refuses what is not whole or not sound; it keeps events of unknown
// type, and passes over fields it does not know, because later versions add both without a new format.
import { z } from 'zod';
import { plainIssues } from './definition/plain-issues.js';
import { type EventType, eventBodies, type Numbered, type WalkEvent } from './events.js';
import { quoted, showPath } from './problems.js';
import { type Fields, readReadingEvent } from './reading-event.js';
import { sessionFormat } from './session-events.js';

/** The number of a session's first event; each next one is one more. */
export const firstSeq = 0;

/** An event of a type this version does not know. */
export interface OtherEvent {
  readonly seq: number;
  readonly t: number;
  readonly type: string;
}

interface Decoded {
  readonly prev: string;
  /** Fields of a known event that this version does not know. */
  readonly unknownKeys?: readonly string[];
}
export type DecodedLine =
  | (Decoded & { readonly known: true; readonly event: Numbered })
  | (Decoded & { readonly known: false; readonly event: OtherEvent });

export class EventLineError extends Error {
  override readonly name = 'EventLineError';
  constructor(
    readonly line: number,
    readonly what: string,
    readonly fix: string,
    /** False where the line is no JSON object at all, as a line cut short is. */
    readonly whole: boolean,
  ) {
    super(`line ${line}: ${what}; ${fix}`);
  }
}

/**
 * The line for an event, without newline; `prev` is the chain value before it, as 16 hex digits.
 * @throws TypeError for an event that would not read back as it is (a number that is not finite, say).
 */
export const encodeEvent = (seq: number, event: WalkEvent, prev: string): string => {
  const { t, type, ...rest } = event;
  const fields = Object.assign({ seq, t, type }, rest, { seq, prev });
  const wrong = faultIn(fields);
  if (wrong !== undefined) throw new TypeError(`event ${event.type} cannot be written: ${wrong}`);
  return JSON.stringify(fields);
};

/** @throws EventLineError naming the line, what is wrong with it and what can be done. */
export const decodeLine = (text: string, lineNumber: number): DecodedLine => {
  const fields = parseObject(text, lineNumber);
  const refuse = (what: string, fix = restore): EventLineError =>
    new EventLineError(lineNumber, what, fix, true);
  const { seq, t, type, prev } = fields;
  if (!isSeq(seq)) throw refuse('"seq" is not a whole number');
  if (!isTime(t)) throw refuse('"t" is not a number of seconds');
  if (typeof type !== 'string') throw refuse('"type" is not a text');
  if (typeof prev !== 'string') throw refuse('"prev" is not a text');
  if (type === 'session-opened') refuseOtherFormat(fields.format, refuse);

  let unknownKeys: string[] | undefined;
  const noteUnknown = (key: string): void => {
    unknownKeys ??= [];
    unknownKeys.push(key);
  };
  const event = readEvent(fields, type, noteUnknown);
  if (event === undefined) return { known: false, event: { seq, t, type }, prev };
  if (typeof event === 'string') throw refuse(`${type}: ${event}`);
  return unknownKeys === undefined
    ? { known: true, event, prev }
    : { known: true, event, prev, unknownKeys };
};

const restore = 'the file was changed or damaged here; use a copy from before';
const isSeq = (seq: unknown): seq is number => Number.isSafeInteger(seq) && (seq as number) >= 0;
const isTime = (t: unknown): t is number => typeof t === 'number' && Number.isFinite(t);

const parseObject = (text: string, lineNumber: number): Fields => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    value = undefined;
  }
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) return value as Fields;
  throw new EventLineError(lineNumber, 'the line is not one whole JSON object', restore, false);
};

const refuseOtherFormat = (
  format: unknown,
  refuse: (what: string, fix: string) => EventLineError,
): void => {
  if (format === sessionFormat) return;
  const isSession = typeof format === 'string' && format.startsWith('pinwalk-session/');
  throw isSession
    ? refuse(
        `the session is in format ${quoted(format)}, this version reads "${sessionFormat}"`,
        'use the version of pinwalk that wrote it, or a newer one',
      )
    : refuse('"format" does not name a pinwalk session', restore);
};

const commonKeys = ['seq', 't', 'type', 'prev'];
type KnownBody = Exclude<EventType, 'reading-taken'>;
interface Body {
  readonly strict: z.ZodObject;
  readonly adding: z.ZodObject;
  readonly keys: ReadonlySet<string>;
}
const bodies: ReadonlyMap<string, Body> = new Map(
  (Object.keys(eventBodies) as KnownBody[]).map((type) => {
    const strict: z.ZodObject = eventBodies[type];
    const { shape } = strict;
    const keys = new Set([...Object.keys(shape), ...commonKeys]);
    return [type, { strict, adding: z.object(shape), keys }] as const;
  }),
);

const readEvent = (
  fields: Fields,
  type: string,
  unknownKey: (key: string) => void,
): Numbered | string | undefined => {
  if (type === 'reading-taken') return readReadingEvent(fields, unknownKey);
  const body = bodies.get(type);
  if (body === undefined) return undefined;
  const read = body.adding.safeParse(fields);
  if (!read.success) return firstIssue(body.adding, fields, read.error);
  for (const key in fields) if (!body.keys.has(key)) unknownKey(key);
  return { seq: fields.seq, t: fields.t, type, ...read.data } as unknown as Numbered;
};

/** Why an event about to be written would not read back; undefined when it will. */
const faultIn = (fields: Fields): string | undefined => {
  if (!isSeq(fields.seq)) return '"seq" is not a whole number';
  if (!isTime(fields.t)) return '"t" is not a finite number';
  if (fields.type === 'reading-taken') {
    let unknown: string | undefined;
    const event = readReadingEvent(fields, (key) => {
      unknown = key;
    });
    if (typeof event === 'string') return event;
    return unknown === undefined ? undefined : `${quoted(unknown)} is not a field of a reading`;
  }
  const body = bodies.get(String(fields.type))?.strict;
  if (body === undefined) return 'its type is not known';
  const { seq: _seq, t: _t, type: _type, prev: _prev, ...rest } = fields;
  const read = body.safeParse(rest);
  return read.success ? undefined : firstIssue(body, rest, read.error);
};

const firstIssue = (body: z.ZodObject, value: unknown, issues: z.ZodError): string => {
  const [problem] = plainIssues(body, value, issues.issues);
  if (problem === undefined) return 'it does not have the right form';
  return `${showPath(problem.path)}: ${problem.what}`;
};

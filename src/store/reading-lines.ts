// The fast way to read stored readings. They come by the million and look alike: between their numbers, line after
// line holds the same bytes. So a line that was read with every check is learned as a form, and of a line that is the
// same but for its numbers and its place on the chain no more than these are read. What fits no form is left to the
// way with every check.
import type { DecodedLine } from '../core/event-line.js';
import type { Numbered, ReadingTaken } from '../core/events.js';
import { isFault, isValue } from '../core/reading.js';
import { ByteNumber } from './byte-number.js';

/** A line is `{"seq":` number `,"t":` number `before` value `after` prev `"}`. */
interface Form {
  readonly before: Buffer;
  /** Null for a reading without a value: `before` then reaches to `prev`. */
  readonly after: Buffer | null;
  readonly event: Numbered<ReadingTaken>;
}

/** More than the ranges of a meter and its ways to show nothing; the ones not met for long make room. */
const mostForms = 24;

const head = Buffer.from('{"seq":');
const beforeT = Buffer.from(',"t":');
const ending = Buffer.from('"}');
const valueKey = '"value":';
const prevDigits = /^[0-9a-f]{16}$/u;
const prevLength = 16;

export class ReadingLines {
  /** The one met last comes first. */
  readonly #forms: Form[] = [];
  readonly #number = new ByteNumber();
  #value = 0;

  /** What `decodeLine` gives for a line that fits a form. */
  read(bytes: Buffer, from: number, to: number): DecodedLine | undefined {
    const number = this.#number;
    const endingAt = to - ending.length;
    const prevAt = endingAt - prevLength;
    if (!holds(bytes, from, head) || !holds(bytes, endingAt, ending)) return undefined;
    const seq = number.read(bytes, from + head.length);
    if (!Number.isSafeInteger(seq) || seq < 0 || !holds(bytes, number.end, beforeT)) {
      return undefined;
    }
    const t = number.read(bytes, number.end + beforeT.length);
    if (!Number.isFinite(t) || !isHex(bytes, prevAt, endingAt)) return undefined;
    const form = this.#formOf(bytes, number.end, prevAt);
    if (form === undefined) return undefined;
    const event =
      form.after === null
        ? { ...form.event, seq, t }
        : { ...form.event, seq, t, value: this.#value };
    return new ReadLine(event, bytes, prevAt, endingAt);
  }

  /** Learns the form of a line that has one: a reading just as this program writes it, without free text. */
  learn(text: string, { event, prev }: Extract<DecodedLine, { known: true }>): void {
    if (event.type !== 'reading-taken' || isFault(event) || !prevDigits.test(prev)) return;
    if (text !== JSON.stringify({ ...event, prev })) return;
    const between = text.slice(
      `${head}${event.seq}${beforeT}${event.t}`.length,
      -(prevLength + ending.length),
    );
    const valueAt = between.indexOf(valueKey) + valueKey.length;
    const [before, after] = isValue(event)
      ? [between.slice(0, valueAt), between.slice(valueAt + `${event.value}`.length)]
      : [between, null];
    this.#forms.unshift({
      before: Buffer.from(before),
      after: after === null ? null : Buffer.from(after),
      event,
    });
    this.#forms.splice(mostForms);
  }

  /** Leaves the value of the line behind, where it has one. */
  #formOf(bytes: Buffer, between: number, prevAt: number): Form | undefined {
    const forms = this.#forms;
    for (let n = 0; n < forms.length; n += 1) {
      const form = forms[n] as Form;
      if (!this.#fits(form, bytes, between, prevAt)) continue;
      if (n > 0) forms.unshift(...forms.splice(n, 1));
      return form;
    }
    return undefined;
  }

  #fits({ before, after }: Form, bytes: Buffer, between: number, prevAt: number): boolean {
    if (!holds(bytes, between, before)) return false;
    const valueAt = between + before.length;
    if (after === null) return valueAt === prevAt;
    this.#value = this.#number.read(bytes, valueAt);
    const { end } = this.#number;
    return (
      Number.isFinite(this.#value) && end + after.length === prevAt && holds(bytes, end, after)
    );
  }
}

/** Few ask for `prev`: it is made a text when they do, while the bytes are there. */
class ReadLine {
  readonly known = true;
  constructor(
    readonly event: Numbered<ReadingTaken>,
    readonly bytes: Buffer,
    readonly prevAt: number,
    readonly endingAt: number,
  ) {}

  get prev(): string {
    return this.bytes.toString('latin1', this.prevAt, this.endingAt);
  }
}

const holds = (bytes: Buffer, at: number, wanted: Buffer): boolean => {
  for (let n = 0; n < wanted.length; n += 1) if (bytes[at + n] !== wanted[n]) return false;
  return true;
};

const isHex = (bytes: Buffer, from: number, to: number): boolean => {
  for (let at = from; at < to; at += 1) if (hexDigits[bytes[at] as number] !== 1) return false;
  return true;
};

const hexDigits = new Uint8Array(256);
for (const digit of Buffer.from('0123456789abcdef')) hexDigits[digit] = 1;

// Lines read one after another, each by what was learned from those before, give what each gives by itself.
import { isUtf8 } from 'node:buffer';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type DecodedLine,
  decodeLine,
  EventLineError,
  encodeEvent,
} from '../../src/core/event-line.js';
import type { WalkEvent } from '../../src/core/events.js';
import { EventLines } from '../../src/store/event-lines.js';
import { arbitraryReading } from './event-arbitrary.js';

type Outcome = Pick<DecodedLine, 'known' | 'event' | 'prev'> | string | undefined;

const outcome = (decode: () => DecodedLine | undefined): Outcome => {
  try {
    const decoded = decode();
    if (decoded === undefined) return undefined;
    const { known, event, prev } = decoded;
    return { known, event, prev };
  } catch (error) {
    if (!(error instanceof EventLineError)) throw error;
    return error.whole ? error.message : undefined;
  }
};

/** Without what was learned before. */
const alone = (line: Buffer, number: number): Outcome =>
  isUtf8(line) ? outcome(() => decodeLine(line.toString(), number)) : undefined;

/** The lines lie in one buffer, with others before and behind them. */
const expectAlike = (lines: readonly Buffer[]): void => {
  const decoder = new EventLines();
  const newline = Buffer.from('\n');
  const bytes = Buffer.concat(lines.flatMap((line) => [line, newline]));
  let from = 0;
  for (const [at, line] of lines.entries()) {
    const to = from + line.length;
    expect(outcome(() => decoder.decode(bytes, from, to, at + 1))).toEqual(alone(line, at + 1));
    from = to + 1;
  }
};

const prevs = fc.stringMatching(/^[0-9a-f]{16}$/u);
const seqs = fc.nat({ max: Number.MAX_SAFE_INTEGER });
const lineOf = (event: WalkEvent, seq: number, prev: string): Buffer =>
  Buffer.from(encodeEvent(seq, event, prev));

/** Readings of one meter: few ranges, many values. */
const meterReading: fc.Arbitrary<WalkEvent> = fc
  .tuple(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.constantFrom(
      { range: 600, resolution: 0.01 },
      { range: 6000, resolution: 0.1, polarity: 'red-walks' as const },
      { flags: ['low-battery' as const] },
    ),
    fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => ({ value })),
      fc.constant({ overload: true as const }),
      fc.constant({ blank: true as const }),
    ),
    fc.boolean(),
  )
  .map(([t, display, shown, shownFirst]) => ({
    type: 'reading-taken',
    t: t === 0 ? 0 : t,
    function: 'resistance',
    ...(shownFirst ? { ...shown, ...display } : { ...display, ...shown }),
  }));

const readingLines = fc.array(
  fc
    .tuple(fc.oneof({ weight: 4, arbitrary: meterReading }, arbitraryReading), seqs, prevs)
    .map(([event, seq, prev]) => lineOf(event, seq, prev)),
  { minLength: 2, maxLength: 60 },
);

/** A line with a few bytes of it replaced, removed or put in. */
const damaged = (line: Buffer): fc.Arbitrary<Buffer> =>
  fc
    .array(
      fc.tuple(
        fc.nat({ max: line.length }),
        fc.nat({ max: 2 }),
        fc.oneof(
          fc.constantFrom(
            '',
            '0',
            '-',
            '.',
            'e5',
            '"',
            ',',
            '}',
            ' ',
            '\r',
            '\\',
            '"t":5,',
            '1e999',
          ),
          fc.string({ unit: 'binary', maxLength: 2 }),
        ),
      ),
      { minLength: 1, maxLength: 3 },
    )
    .map((changes) =>
      changes.reduce(
        (bytes, [at, removed, put]) =>
          Buffer.concat([bytes.subarray(0, at), Buffer.from(put), bytes.subarray(at + removed)]),
        line,
      ),
    )
    .map((bytes) => Buffer.from(bytes.filter((byte) => byte !== 0x0a)));

describe('lines of readings, one after another', () => {
  it('should give what each line gives by itself', () => {
    fc.assert(fc.property(readingLines, expectAlike), { seed: 11, numRuns: 300 });
  });

  it('should give what each line gives by itself, whatever was done to some of them', () => {
    const mixed = readingLines.chain((lines) =>
      fc
        .tuple(...lines.map((line) => fc.oneof(fc.constant(line), damaged(line))))
        .map((some) => [...lines, ...some]),
    );
    fc.assert(fc.property(mixed, expectAlike), { seed: 11, numRuns: 300 });
  });

  it.each([
    [
      'a key given twice',
      '{"seq":2,"t":3,"type":"reading-taken","t":3,"function":"diode","value":1',
    ],
    [
      'a value that is too large',
      '{"seq":2,"t":3,"type":"reading-taken","function":"diode","value":1e999',
    ],
    [
      'a number with a leading zero',
      '{"seq":02,"t":3,"type":"reading-taken","function":"diode","value":1',
    ],
    ['a number below zero', '{"seq":-2,"t":3,"type":"reading-taken","function":"diode","value":1'],
    ['another order', '{"t":3,"seq":2,"type":"reading-taken","function":"diode","value":1'],
    ['white space', '{"seq":2, "t":3,"type":"reading-taken","function":"diode","value":1'],
    [
      'two outcomes',
      '{"seq":2,"t":3,"type":"reading-taken","function":"diode","value":1,"blank":true',
    ],
  ])('should not mistake %s for a reading it knows', (_, begun) => {
    const known = '{"seq":1,"t":2,"type":"reading-taken","function":"diode","value":1';
    const prev = ',"prev":"0123456789abcdef"}';
    const again = begun.replaceAll('3', '4');
    const lines = [known, known, begun, begun, again].map((line) => Buffer.from(`${line}${prev}`));
    expectAlike(lines);
  });
});

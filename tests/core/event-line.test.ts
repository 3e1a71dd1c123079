import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeLine, encodeEvent } from '../../src/core/event-line.js';
import type { WalkEvent } from '../../src/core/events.js';
import { arbitraryBody, arbitraryReading, bodyTypes } from '../store/event-arbitrary.js';

const prev = '0123456789abcdef';
const reading = { type: 'reading-taken', t: 1.5, function: 'resistance', value: 388 } as const;

const roundTrip = (event: WalkEvent) => {
  const line = encodeEvent(41, event, prev);
  expect(line).not.toContain('\n');
  expect(decodeLine(line, 42)).toEqual({ known: true, prev, event: { seq: 41, ...event } });
};

describe('an event and its line', () => {
  it('should have the published form', () => {
    expect(encodeEvent(7, reading, prev)).toBe(
      '{"seq":7,"t":1.5,"type":"reading-taken","function":"resistance","value":388,"prev":"0123456789abcdef"}',
    );
  });

  it('should come back alike for any reading', () => {
    fc.assert(fc.property(arbitraryReading, roundTrip), { seed: 2, numRuns: 500 });
  });

  it.each(bodyTypes)('should come back alike for any %s', (type) => {
    fc.assert(fc.property(arbitraryBody(type), roundTrip), { seed: 2, numRuns: 60 });
  });

  it('should cover every event type the catalogue has', () => {
    expect(bodyTypes.length).toBeGreaterThan(15);
  });

  it('should number the line itself, whatever number the event had', () => {
    const numbered = { seq: 3, ...reading };
    expect(decodeLine(encodeEvent(9, numbered, prev), 1).event.seq).toBe(9);
  });
});

describe('encoding', () => {
  it.each<[string, object]>([
    ['a time that is not finite', { ...reading, t: Number.NaN }],
    ['a value that is not finite', { ...reading, value: Infinity }],
    ['a reading with a strange field', { ...reading, colour: 'red' }],
    ['a reading that is two things', { ...reading, overload: true }],
    ['a body with a strange field', { type: 'walk-freed', t: 1, reason: 'negative', colour: 1 }],
    ['a body with a missing field', { type: 'walk-freed', t: 1 }],
    ['an unknown type', { type: 'moon-risen', t: 1 }],
  ])('should refuse %s', (_, event) => {
    expect(() => encodeEvent(1, event as WalkEvent, prev)).toThrow(TypeError);
  });
});

describe('decoding', () => {
  const line = (fields: string) => `{"seq":1,"t":2,${fields},"prev":"${prev}"}`;

  it.each([
    ['a torn line', '{"seq":1,"t":2,"type":"walk-fr', /not one whole JSON object/],
    ['an empty line', '', /not one whole JSON object/],
    ['a bare number', '12', /not one whole JSON object/],
    ['a list', '[]', /not one whole JSON object/],
    ['a fraction for seq', '{"seq":1.5,"t":2,"type":"x","prev":""}', /"seq"/],
    ['an endless time', '{"seq":1,"t":1e999,"type":"x","prev":""}', /"t"/],
    ['no type', '{"seq":1,"t":2,"prev":""}', /"type"/],
    ['no chain mark', '{"seq":1,"t":2,"type":"walk-freed"}', /"prev"/],
    ['an unknown function', line('"type":"reading-taken","function":"x","value":1'), /"function"/],
    ['no function', line('"type":"reading-taken","value":1'), /"function" is missing/],
    ['an endless value', line('"type":"reading-taken","function":"diode","value":1e999'), /value/],
    ['no outcome', line('"type":"reading-taken","function":"diode"'), /exactly one/],
    ['overload false', line('"type":"reading-taken","function":"diode","overload":false'), /true/],
    ['range zero', line('"type":"reading-taken","function":"diode","value":1,"range":0'), /range/],
    ['a strange flag', line('"type":"reading-taken","fault":"x","flags":["x"]'), /flags/],
    ['a strange lead', line('"type":"reading-taken","fault":"x","polarity":"x"'), /polarity/],
    ['a strange reason', line('"type":"walk-freed","reason":"x"'), /walk-freed: reason: "x"/],
    ['a missing body field', line('"type":"walk-freed"'), /"reason" is missing/],
  ])('should refuse %s, naming the line', (_, text, says) => {
    expect(() => decodeLine(text, 12)).toThrow(says);
    expect(() => decodeLine(text, 12)).toThrow(/^line 12: /);
  });

  it('should tell a line that is no object from one that is not sound', () => {
    expect(() => decodeLine('{"seq":1,', 3)).toThrow(expect.objectContaining({ whole: false }));
    expect(() => decodeLine('{"seq":"1"}', 3)).toThrow(expect.objectContaining({ whole: true }));
  });

  it('should refuse a newer format in words', () => {
    const newer = line('"type":"session-opened","format":"pinwalk-session/2","shiny":{}');
    expect(() => decodeLine(newer, 1)).toThrow(/in format "pinwalk-session\/2".*newer one/);
    const foreign = line('"type":"session-opened","format":"something else"');
    expect(() => decodeLine(foreign, 1)).toThrow(/does not name a pinwalk session/);
  });

  it('should keep an event of unknown type', () => {
    expect(decodeLine(line('"type":"moon-risen","phase":0.5'), 1)).toEqual({
      known: false,
      prev,
      event: { seq: 1, t: 2, type: 'moon-risen' },
    });
  });

  it('should pass over fields a later version added, and say which', () => {
    expect(decodeLine(line('"type":"walk-freed","reason":"negative","mood":"good"'), 1)).toEqual({
      known: true,
      prev,
      event: { seq: 1, t: 2, type: 'walk-freed', reason: 'negative' },
      unknownKeys: ['mood'],
    });
    const brighter = line('"type":"reading-taken","function":"diode","value":0.4,"lux":3');
    expect(decodeLine(brighter, 1)).toEqual({
      known: true,
      prev,
      event: { seq: 1, t: 2, type: 'reading-taken', function: 'diode', value: 0.4 },
      unknownKeys: ['lux'],
    });
  });

  it('should not let a line reach any prototype', () => {
    const hostile = [
      line('"type":"walk-freed","reason":"negative","__proto__":{"polluted":1}'),
      line('"type":"reading-taken","function":"diode","value":1,"__proto__":{"polluted":1}'),
      line('"type":"constructor","__proto__":{"polluted":1}'),
      line('"type":"__proto__","constructor":{"prototype":{"polluted":1}}'),
    ];
    for (const text of hostile) {
      const { event } = decodeLine(text, 1);
      expect(Object.getPrototypeOf(event)).toBe(Object.prototype);
      expect('polluted' in event).toBe(false);
      expect('polluted' in {}).toBe(false);
    }
  });

  it('should answer any text with an event or one clear line', () => {
    const pieces = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.json(),
      fc.json().map((value) => line(`"type":"reading-taken","function":${value},"value":${value}`)),
    );
    fc.assert(
      fc.property(pieces, (text) => {
        try {
          expect(decodeLine(text, 5).prev).toBeTypeOf('string');
        } catch (error) {
          expect(error).toMatchObject({ name: 'EventLineError', line: 5 });
          expect(String(error)).not.toMatch(/\p{Cc}/u);
        }
      }),
      { seed: 3, numRuns: 1000 },
    );
  });
});

import { PassThrough } from 'node:stream';
import { describe, expect, it, onTestFinished } from 'vitest';
import { type Input, inputTime } from '../../src/core/inputs.js';
import { createStdinLink } from '../../src/link/stdin-link.js';
import { createTypedFeed } from '../../src/link/typed-feed.js';
import { readTypedLine } from '../../src/link/typed-line.js';
import { handClock } from './hand-clock.js';
import { until } from './record-link.js';

describe('readTypedLine', () => {
  it.each([
    ['389.6', 389.6, 0.1],
    [' 4.7k ', 4700, 100],
    ['4.70 kΩ', 4700, 10],
    ['1M', 1e6, 1e6],
    ['12 ohm', 12, 1],
    ['0.2R', 0.2, 0.1],
    ['-0.3', -0.3, 0.1],
    ['.5', 0.5, 0.1],
  ])('should read %j as %d ohm', (text, value, resolution) => {
    const line = readTypedLine(text, 'resistance');
    expect(line).toMatchObject({ typed: 'value', value });
    expect(line).toHaveProperty('resolution', expect.closeTo(resolution, 12));
  });

  it.each([
    ['0.512', 0.512],
    ['512 mV', 0.512],
    ['0.512V', 0.512],
  ])('should read %j as %d volt', (text, value) => {
    expect(readTypedLine(text, 'diode')).toMatchObject({ typed: 'value', value });
  });

  it.each(['OL', 'ol', 'O.L', 'overload'])('should read %s as overload', (text) => {
    expect(readTypedLine(text, 'resistance')).toEqual({ typed: 'overload' });
  });

  it.each(['open', 'next', 'back', 'skip', 'retake', 'quit', 'NEXT'])(
    'should read %s as an act',
    (text) => {
      expect(readTypedLine(text, 'diode')).toEqual({ typed: 'act', act: text.toLowerCase() });
    },
  );

  it.each([
    '389,6',
    '1e3',
    '4k7',
    '5 V',
    'hello',
    '1.2.3',
    '--1',
    '0x10',
    '\u001b[A',
    '9'.repeat(400),
  ])('should refuse %j in one clean line', (text) => {
    const line = readTypedLine(text, 'resistance');
    expect(line.typed).toBe('fault');
    expect(line).toHaveProperty(
      'says',
      expect.stringMatching(/^typed "[^\p{Cc}]{1,70}": write a value in Ω/u),
    );
  });

  it('should refuse ohms where volts are measured', () => {
    expect(readTypedLine('5 ohm', 'diode').typed).toBe('fault');
  });
});

describe('typed values as a feed', () => {
  const feedOf = async (text: string, chunk = text.length): Promise<Input[]> => {
    const input = new PassThrough();
    const inputs: Input[] = [];
    const feed = createTypedFeed({
      link: createStdinLink(handClock(), input),
      measure: { function: 'resistance', polarity: 'red-walks' },
    });
    onTestFinished(() => feed.stop());
    feed.start((taken) => inputs.push(taken));
    const bytes = Buffer.from(text);
    for (let at = 0; at < bytes.length; at += chunk) input.write(bytes.subarray(at, at + chunk));
    input.end();
    await until('the end', () => {
      const last = inputs.at(-1);
      return last?.kind === 'link' && last.change === 'ended';
    });
    return inputs;
  };

  it('should make each value a hold of three seconds and a lift of a second', async () => {
    const inputs = await feedOf('389.6\n');
    const readings = inputs.flatMap((input) => (input.kind === 'reading' ? [input.reading] : []));
    expect(readings).toHaveLength(40);
    expect(readings[0]).toEqual({
      t: 0,
      function: 'resistance',
      polarity: 'red-walks',
      value: 389.6,
      resolution: expect.closeTo(0.1, 12),
    });
    expect(readings[29]).toMatchObject({ t: 2.9, value: 389.6 });
    expect(readings[30]).toEqual({
      t: 3,
      function: 'resistance',
      polarity: 'red-walks',
      overload: true,
    });
    expect(readings.at(-1)).toMatchObject({ t: 3.9, overload: true });
  });

  it('should answer "open" after an overload that was typed', async () => {
    const inputs = await feedOf('OL\r\n');
    expect(inputs.at(-2)).toEqual({ kind: 'act', t: 1, act: { act: 'open' } });
  });

  it('should ignore empty lines, take acts, keep time and hear a last line without an end', async () => {
    const inputs = await feedOf('\n\n12\n  \nnext\n4.7k\nback');
    const acts = inputs.flatMap((input) =>
      input.kind === 'act' ? [[input.t, input.act.act]] : [],
    );
    expect(acts).toEqual([
      [4, 'next'],
      [8, 'back'],
    ]);
    const times = inputs.map(inputTime);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(inputs.some((input) => input.kind === 'reading' && 'fault' in input.reading)).toBe(
      false,
    );
  });

  it('should give the same inputs however the lines arrive', async () => {
    const text = '389.6\nΩ\nOL\nnext\n';
    expect(await feedOf(text, 1)).toEqual(await feedOf(text));
  });

  it('should not take an over-long line for a value', async () => {
    const inputs = await feedOf(`${'9'.repeat(500)}\n`);
    expect(inputs[1]).toMatchObject({ reading: { fault: expect.stringContaining('too long') } });
    expect(inputs).toHaveLength(3);
  });

  it('should turn anything else into one fault', async () => {
    const inputs = await feedOf('hello\n');
    expect(inputs).toEqual([
      { kind: 'link', t: 0, change: 'opened', detail: 'standard input' },
      { kind: 'reading', reading: { t: 0, fault: expect.stringContaining('typed "hello"') } },
      { kind: 'link', t: 0, change: 'ended' },
    ]);
  });
});

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Input } from '../../src/core/inputs.js';
import { createLogFeed, type Pace } from '../../src/link/log-feed.js';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import { until } from './record-link.js';

const fileWith = (text: string | Uint8Array): string => {
  const folder = mkdtempSync(join(tmpdir(), 'pinwalk-log-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const file = join(folder, 'readings.jsonl');
  writeFileSync(file, text);
  return file;
};

const start = (file: string, pace: Pace) => {
  const inputs: { at: number; input: Input }[] = [];
  const refusals: string[] = [];
  const clock = createMonotonicClock();
  const feed = createLogFeed({ file, pace, clock, refused: (says) => refusals.push(says) });
  onTestFinished(() => feed.stop());
  feed.start((input) => inputs.push({ at: clock.now(), input }));
  const over = (): boolean =>
    inputs.some(({ input }) => input.kind === 'link' && input.change !== 'opened');
  return { feed, inputs, refusals, over };
};

const reading = (t: number, value: number): string =>
  JSON.stringify({ t, function: 'resistance', value });

describe('a reading log as a feed', () => {
  it('should give readings, cues and acts in order, from opened to ended', async () => {
    const lines = [reading(12.5, 389.6), '{"t":12.6,"mark":"press"}', '{"t":12.7,"mark":"next"}'];
    const { inputs, over } = start(fileWith(`${lines.join('\r\n')}\r\n`), 'fast');
    await until('the end', over);
    expect(inputs.map(({ input }) => input)).toMatchObject([
      { kind: 'link', t: 12.5, change: 'opened' },
      { kind: 'reading', reading: { t: 12.5, function: 'resistance', value: 389.6 } },
      { kind: 'cue', t: 12.6, cue: 'press' },
      { kind: 'act', t: 12.7, act: { act: 'next' } },
      { kind: 'link', t: 12.7, change: 'ended' },
    ]);
  });

  it('should keep the pace of the log in real time', async () => {
    const file = fileWith([reading(5, 1), reading(5.1, 2), reading(5.3, 3)].join('\n'));
    const { inputs, over } = start(file, 'real-time');
    await until('the end', over);
    const readings = inputs.filter(({ input }) => input.kind === 'reading');
    const first = readings[0]?.at ?? 0;
    const waited = readings.map(({ at }) => at - first);
    expect(waited[1]).toBeGreaterThan(0.09);
    expect(waited[2]).toBeGreaterThan(0.29);
    expect(waited[2]).toBeLessThan(0.6);
  });

  it('should read a long log whole, and faster than it was made', async () => {
    const count = 5000;
    const lines = Array.from({ length: count }, (_, i) => reading(i / 10, i));
    const { inputs, over } = start(fileWith(lines.join('\n')), 'fast');
    await until('the end', over);
    expect(inputs).toHaveLength(count + 2);
  });

  it.each([
    ['{"t":1', 'line 2: not JSON'],
    ['', 'line 2: not JSON'],
    [reading(0, 1), 'line 2: time falls'],
    ['{"t":2,"mark":"dance"}', 'line 2: unknown mark'],
  ])('should stop at the bad line %j and name it', async (bad, says) => {
    const file = fileWith([reading(1, 1), bad, reading(3, 3)].join('\n'));
    const { inputs, refusals, over } = start(file, 'fast');
    await until('the end', over);
    expect(refusals[0]).toContain(says);
    expect(inputs.map(({ input }) => input.kind)).toEqual(['link', 'reading', 'link']);
    expect(inputs.at(-1)?.input).toMatchObject({ change: 'failed', detail: refusals[0] });
  });

  it('should say that a file is not there', async () => {
    const { refusals, over } = start('/nowhere/readings.jsonl', 'fast');
    await until('the end', over);
    expect(refusals).toEqual(['/nowhere/readings.jsonl: no such file']);
  });

  it('should refuse a line without end instead of holding it', async () => {
    const { refusals, over } = start(fileWith('x'.repeat(3 << 20)), 'fast');
    await until('the end', over);
    expect(refusals[0]).toContain('a line is longer than');
  });

  it('should stop at once, in the middle of a pause', async () => {
    const { feed, inputs } = start(
      fileWith([reading(0, 1), reading(3600, 2)].join('\n')),
      'real-time',
    );
    await until('the first reading', () => inputs.length === 2);
    await feed.stop();
    expect(inputs).toHaveLength(2);
  });

  it('should stop at once, before it has come to the pause', async () => {
    const file = fileWith([reading(0, 1), reading(3600, 2)].join('\n'));
    const feed = createLogFeed({ file, pace: 'real-time', clock: createMonotonicClock() });
    const inputs: Input[] = [];
    const stopped = new Promise<void>((resolve) =>
      feed.start((input) => {
        inputs.push(input);
        if (input.kind === 'reading') void feed.stop().then(resolve);
      }),
    );
    await stopped;
    expect(inputs).toHaveLength(2);
  });
});

// `rerun` of the built program on plain reading logs, as other programs hold it to its word.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { runProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const profile = fileURLToPath(new URL('../fixtures/short-row.json', import.meta.url));

const logOf = (lines: readonly object[]): string => {
  const path = join(temporaryFolder(), 'readings.jsonl');
  writeFileSync(path, lines.map((line) => `${JSON.stringify(line)}\n`).join(''));
  return path;
};

const eventsOf = async (args: readonly string[]) => {
  const { code, lines, stderr } = await runProgram(['rerun', ...args, '--json']);
  expect(stderr).toBe('');
  expect(code).toBe(0);
  return lines.map((line) => JSON.parse(line));
};

/** Ten readings a second; a line that reads nothing unless its part is pressed, 0.3 s after each cue. */
const pressedLog = (answers: boolean): object[] => {
  const lines: object[] = [];
  const windows = [1.9, 1.7, 2.1, 1.8, 2, 1.9, 1.7, 2.1, 1.9, 1.8];
  let t = 0;
  let closed = false;
  const read = (seconds: number, lag: number, next: boolean): void => {
    for (let i = 0; i < seconds * 10; i += 1) {
      if (i >= lag * 10) closed = next;
      const shows = closed ? { value: 391 + (i % 3) * 0.1 } : { overload: true };
      lines.push({ t: Number(t.toFixed(3)), function: 'resistance', ...shows });
      t += 0.1;
    }
  };
  read(2, 0, false);
  for (const [i, seconds] of windows.entries()) {
    lines.push({ t: Number(t.toFixed(3)), mark: i % 2 === 0 ? 'press' : 'release' });
    read(seconds, 0.3, answers && i % 2 === 0);
  }
  lines.push({ t: Number(t.toFixed(3)), mark: 'release' });
  return lines;
};

describe('rerun', () => {
  it('should walk a reading log from its first contact on', async () => {
    const lines: object[] = [];
    let t = 0;
    const read = (seconds: number, shows: object): void => {
      for (let i = 0; i < seconds * 10; i += 1, t += 0.1) {
        lines.push({ t: Number(t.toFixed(3)), function: 'resistance', ...shows });
      }
    };
    for (const value of [0.2, 388.1, 391.7]) {
      read(0.8, { overload: true });
      read(1.5, { value });
    }
    const events = await eventsOf([logOf(lines), '--profile', profile]);
    const judged = events.filter(({ type }) => type === 'pin-judged');
    expect(judged.map(({ pin, verdict }) => [pin, verdict])).toEqual([
      ['1', 'normal'],
      ['2', 'normal'],
      ['3', 'normal'],
    ]);
    const settled = events.find(({ type, pin }) => type === 'pin-settled' && pin === '2');
    expect(settled.value).toBeCloseTo(388.1, 1);
    expect(settled.standardUncertainty).toBeGreaterThan(0.5);
    expect(events.some(({ type }) => type === 'reading-taken')).toBe(false);
    expect(await eventsOf([logOf(lines), '--profile', profile])).toEqual(
      events.map((event) => expect.objectContaining({ seq: event.seq, type: event.type })),
    );
  });

  it.each([
    [true, 'loose'],
    [false, 'steady-open'],
  ])('should judge a press test whose reading answers: %s', async (answers, finding) => {
    const log = logOf(pressedLog(answers));
    const args = [log, '--profile', profile, '--press', 'D0_N', '--part', 'FL1'];
    const events = await eventsOf(args);
    expect(events).toHaveLength(1);
    expect(events[0]).toMatchObject({
      type: 'press-judged',
      line: 'D0_N',
      part: 'FL1',
      finding,
      cycles: 5,
    });
    // Fisher, The Design of Experiments (1935), ch. 2: five pairs told apart without a miss, 1/252.
    if (answers) expect(events[0].pValue).toBeCloseTo(1 / 252, 10);
    expect(events[0].adjustedPValue).toBeGreaterThanOrEqual(events[0].pValue);
  });

  it('should refuse a press test on a line that no pin carries', async () => {
    const log = logOf(pressedLog(true));
    const { code, stderr } = await runProgram([
      'rerun',
      log,
      '--profile',
      profile,
      '--press',
      'NO',
    ]);
    expect(code).toBe(2);
    expect(stderr).toContain('"NO"');
  });
});

// The built program plays a recorded session as lines, as JSON and as a reading log.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { runProgram, startProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const recorded = (name: string): string =>
  fileURLToPath(new URL(`../../recordings/sessions/${name}.jsonl`, import.meta.url));
const loose = recorded('loose-filter');

interface Line {
  readonly seq: number;
  readonly t: number;
  readonly type: string;
  readonly pin?: string;
  readonly verdict?: string;
}
const parsed = (lines: readonly string[]): Line[] => lines.map((line) => JSON.parse(line) as Line);

describe('replay', () => {
  it('should say everything at once as lines of text', async () => {
    const { code, lines, stderr } = await runProgram([
      'replay',
      loose,
      ...['--plain', '--speed', 'max'],
    ]);
    expect(code).toBe(0);
    expect(stderr).toBe('');
    const text = lines.join('\n');
    expect(text).toContain('5: open?');
    expect(text).toContain('loose joint');
    expect(text).toContain('note at 5: ');
    expect(text).toContain('All pins walked: 38 normal, 2 open.');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/u);
  });

  it('should go to plain by itself without a terminal', async () => {
    const { code, lines } = await runProgram(['replay', loose, '--speed', 'max']);
    expect(code).toBe(0);
    expect(lines.some((line) => line.startsWith('Pin 1, GND'))).toBe(true);
  });

  it('should give the events of the file as JSON, without its readings', async () => {
    const { code, lines } = await runProgram(['replay', loose, '--json', '--speed', 'max']);
    expect(code).toBe(0);
    const wanted = readFileSync(loose, 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Line & { prev?: string })
      .filter(({ type }) => type !== 'reading-taken')
      .map(({ prev: _prev, ...event }) => event);
    expect(wanted.length).toBeGreaterThan(150);
    expect(parsed(lines)).toEqual(wanted);
  });

  it('should keep the pace it is asked for', async () => {
    const running = startProgram(['replay', loose, '--json', '--speed', '50', '--from', '0:30']);
    const begunMs = performance.now();
    await running.line((line) => JSON.parse(line).t > 30 + 1);
    const lines = parsed(running.lines);
    expect(lines[0]?.t).toBeGreaterThan(30);
    await running.line((line) => JSON.parse(line).t > 30 + 60);
    const tookS = (performance.now() - begunMs) / 1000;
    expect(tookS).toBeGreaterThan(1);
    running.child.kill('SIGTERM');
    const { code } = await running.ended;
    expect(code).toBe(0);
  });

  it.each([
    ['pin:8', (line: Line) => line.type === 'pin-reached' && line.pin === '8'],
    ['event:300', (line: Line) => line.seq >= 300],
    ['95', (line: Line) => line.t > 95],
    ['1:35', (line: Line) => line.t > 95],
  ])('should begin at %s', async (from, holds) => {
    const { code, lines } = await runProgram([
      'replay',
      loose,
      ...['--json', '--speed', 'max', '--from', from],
    ]);
    expect(code).toBe(0);
    const [first] = parsed(lines);
    expect(first === undefined ? false : holds(first)).toBe(true);
  });

  it('should write a reading log that walks the same pins', async () => {
    const healthy = recorded('healthy-board');
    const { code, lines, stderr } = await runProgram(['replay', healthy, '--readings']);
    expect(code).toBe(0);
    expect(stderr).toContain('ground check');
    expect(stderr).toContain('pinwalk rerun LOG --profile demo --driver stream-fields-flags');
    const log = join(temporaryFolder(), 'readings.jsonl');
    writeFileSync(log, `${lines.join('\n')}\n`);
    const again = await runProgram([
      'rerun',
      log,
      ...['--profile', 'demo', '--driver', 'stream-fields-flags', '--json'],
    ]);
    expect(again.code).toBe(0);
    const verdicts = new Map(
      parsed(again.lines).flatMap(({ type, pin = '', verdict = '' }) =>
        type === 'pin-judged' ? [[pin, verdict] as const] : [],
      ),
    );
    expect(verdicts.size).toBe(40);
    expect([...verdicts.values()].filter((verdict) => verdict !== 'normal')).toEqual([]);
  });

  it('should write the very log that a session was walked from, and it gives the same captures', async () => {
    const folder = temporaryFolder();
    const log = join(folder, 'readings.jsonl');
    const session = join(folder, 'session.jsonl');
    const { lines } = await runProgram(['replay', loose, '--readings']);
    writeFileSync(log, `${lines.join('\n')}\n`);
    const accuracy = ['--accuracy', '0.1,20', '--counts', '60000'];
    const walked = await runProgram([
      ...['walk', '--link', `log:${log}`, '--log-pace', 'fast', '--profile', 'demo'],
      ...[...accuracy, '--session', session, '--json', '--stay'],
    ]);
    expect(walked.code).toBe(0);
    const back = await runProgram(['replay', session, '--readings']);
    expect(back.lines).toEqual(lines);
    expect(back.stderr).toContain(`rerun LOG --profile demo ${accuracy.join(' ')}`);
    expect(back.stderr).not.toContain('Left out');
    const again = await runProgram([...['rerun', log, '--profile', 'demo', ...accuracy, '--json']]);
    const captures = (from: readonly string[]): unknown[] =>
      parsed(from)
        .filter(({ type }) => ['touch-captured', 'pin-settled', 'pin-judged'].includes(type))
        .map(({ seq: _seq, ...event }) => event);
    expect(captures(again.lines).length).toBeGreaterThan(100);
    expect(captures(again.lines)).toEqual(captures(walked.lines));
  });

  it('should write a press test as a log that judges the same', async () => {
    const { code, lines } = await runProgram([
      'replay',
      loose,
      ...['--readings', '--press', 'LANE1_P', '--part', 'FL2'],
    ]);
    expect(code).toBe(0);
    const log = join(temporaryFolder(), 'press.jsonl');
    writeFileSync(log, `${lines.join('\n')}\n`);
    const again = await runProgram([
      'rerun',
      log,
      ...['--profile', 'demo', '--press', 'LANE1_P', '--part', 'FL2', '--json'],
    ]);
    expect(again.code).toBe(0);
    expect(JSON.parse(again.lines[0] ?? '{}')).toMatchObject({
      type: 'press-judged',
      line: 'LANE1_P',
      part: 'FL2',
      finding: 'loose',
    });
  });

  it.each([
    [[], 2, 'file'],
    [[loose, '--speed', '99'], 2, '0.25 to 50'],
    [[loose, '--speed', 'fast'], 2, 'or max'],
    [[loose, '--json', '--plain'], 2, 'not both'],
    [[loose, '--from', 'soon'], 2, 'pin:8'],
    [[loose, '--from', 'pin:99'], 2, 'no pin "99"'],
    [[loose, '--readings', '--from', '3'], 2, 'leave out'],
    [[loose, '--press', 'LANE1_P'], 2, '--readings'],
    [[loose, '--readings', '--press', 'LANE0_P'], 2, 'no press test of LANE0_P'],
    [['/nonexistent.jsonl'], 3, 'no such file'],
    [[fileURLToPath(new URL('../../profiles/demo.json', import.meta.url))], 3, 'error'],
  ])('should answer %j with exit code %i and a line that helps', async (args, exitCode, says) => {
    const { code, stderr } = await runProgram(['replay', ...(args as string[])]);
    expect(code).toBe(exitCode);
    expect(stderr).toContain(says);
    expect(stderr).not.toContain('    at ');
  });

  it('should say that an unfinished end is not played', async () => {
    const path = join(temporaryFolder(), 'cut.jsonl');
    const whole = readFileSync(loose);
    writeFileSync(path, whole.subarray(0, whole.length - 15));
    const { code, stderr } = await runProgram(['replay', path, '--plain', '--speed', 'max']);
    expect(code).toBe(0);
    expect(stderr).toContain('never finished');
  });
});

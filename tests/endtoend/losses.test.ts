// What a bench sees in a year: the lead pulled mid-walk, the process killed mid-walk. Nothing told is lost, and
// the walk goes on at the same pin.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { runProgram, startProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const profile = fileURLToPath(new URL('../fixtures/short-row.json', import.meta.url));
const typeIs = (type: string) => (line: string) => JSON.parse(line).type === type;
const parsed = (lines: readonly string[]) => lines.map((line) => JSON.parse(line));

describe('losses', { timeout: 120_000 }, () => {
  it('should pause when the lead is pulled and go on at the same pin', async () => {
    const folder = temporaryFolder();
    const driver = 'stream-fields-flags';
    const serving = startProgram([
      ...['bench', 'unplugged?pace=steady', '--profile', profile],
      ...['--pty', join(folder, 'meter'), '--driver', driver],
    ]);
    onTestFinished(async () => {
      serving.child.kill('SIGTERM');
      await serving.ended;
    });
    const link = await serving.line((line) => line.startsWith('serial:'));

    const walk = await runProgram([
      ...['walk', '--link', link, '--driver', driver, '--profile', profile],
      '--cautions-confirmed',
      ...['--session', join(folder, 'session.jsonl'), '--json'],
    ]);

    const events = parsed(walk.lines);
    const changes = events.filter(typed('link-changed')).map(({ change }) => change);
    expect(changes).toEqual(['opened', 'lost', 'returned']);
    const paused = events.findIndex(typed('walk-paused'));
    const pinBefore = events.slice(0, paused).findLast(typed('pin-reached')).pin;
    expect(events.find(typed('walk-continued')).pin).toBe(pinBefore);
    expect(events.filter(typed('walk-finished'))).toHaveLength(1);
    expect(walk.code).toBe(0);
  });

  it('should hold everything it printed when it is killed, and resume at the same pin', async () => {
    const session = join(temporaryFolder(), 'session.jsonl');
    const start = ['walk', '--profile', profile, '--session', session, '--json', '--readings'];
    const walk = startProgram([...start, '--link', 'virtual:healthy?pace=steady']);
    await walk.line((line) => typeIs('pin-judged')(line) && JSON.parse(line).pin === '3');
    walk.child.kill('SIGKILL');
    await walk.ended;

    const stored = readFileSync(session, 'utf8')
      .split('\n')
      .filter((line) => line.endsWith('}'))
      .map((line) => {
        const { prev: _prev, ...event } = JSON.parse(line);
        return event;
      });
    const told = parsed(walk.lines);
    expect(told.length).toBeGreaterThan(20);
    expect(stored.slice(0, told.length)).toEqual(told);

    const resumed = await runProgram(['walk', '--resume', session, '--json']);
    const events = parsed(resumed.lines);
    expect(events[0].type).toBe('session-resumed');
    const pinBefore = stored.findLast(typed('pin-reached')).pin;
    expect(events.find(typed('pin-reached')).pin).toBe(pinBefore);
    expect(events.find(typed('walk-finished')).tally.normal).toBe(7);
    expect((await runProgram(['check', session])).code).toBe(0);
  });
});

const typed =
  (type: string) =>
  (event: { type: string }): boolean =>
    event.type === type;

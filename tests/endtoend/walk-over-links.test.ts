// The built program against the built virtual bench, over a real pseudo-terminal and a real socket, in real
// time: every pin named, every fault found, no key pressed.
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { runProgram, startProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const profile = fileURLToPath(new URL('../fixtures/short-row.json', import.meta.url));

const bench = async (args: readonly string[]): Promise<string> => {
  const serving = startProgram(['bench', 'demo?pace=steady', '--profile', profile, ...args]);
  onTestFinished(async () => {
    serving.child.kill('SIGTERM');
    await serving.ended;
  });
  return serving.line((line) => /^(?:serial|tcp):/u.test(line));
};

const verdictsOf = (lines: readonly string[]): Record<string, string> => {
  const verdicts: Record<string, string> = {};
  for (const line of lines) {
    const event = JSON.parse(line);
    if (event.type === 'pin-judged') verdicts[`${event.pin} ${event.line}`] = event.verdict;
  }
  return verdicts;
};

/** The demo scenario on this row: its last paired line hangs on a loose part, its last single one leaks. */
const found = {
  '1 GND': 'normal',
  '2 D0_P': 'normal',
  '3 D0_N': 'open',
  '4 GND': 'normal',
  '5 RESET': 'normal',
  '6 ENABLE': 'low',
  '7 GND': 'normal',
};

describe('a whole walk without a key', { timeout: 120_000 }, () => {
  it.each([
    ['a pseudo-terminal', 'stream-fields-flags', ['--pty']],
    ['a socket', 'scpi-read', ['--tcp', '0']],
  ])('finds every fault over %s', async (_link, driver, how) => {
    const session = join(temporaryFolder(), 'session.jsonl');
    const link = await bench([...how, '--driver', driver]);

    const walk = await runProgram([
      ...['walk', '--link', link, '--driver', driver, '--profile', profile],
      '--cautions-confirmed',
      ...['--session', session, '--json'],
    ]);

    expect(walk.stderr).toContain('Session closed');
    expect(walk.code).toBe(0);
    expect(verdictsOf(walk.lines)).toEqual(found);
    const check = await runProgram(['check', session]);
    expect(check.lines.join()).toContain('session');
    expect(check.code).toBe(0);

    const again = await runProgram(['rerun', session, '--from-readings', '--json']);
    const decided = (lines: readonly string[]): unknown[] =>
      lines
        .map((line) => JSON.parse(line))
        .filter(({ type }) => type === 'pin-settled' || type === 'pin-judged')
        .map(({ seq: _seq, prev: _prev, ...event }) => event);
    expect(decided(again.lines).length).toBeGreaterThan(13);
    expect(decided(again.lines)).toEqual(decided(walk.lines));
  });
});

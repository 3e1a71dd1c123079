// What the program answers to a person who types: exit codes, one clear line, and the next thing to type.
import { writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { runProgram, startProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const profile = fileURLToPath(new URL('../fixtures/short-row.json', import.meta.url));

const closedPort = (): Promise<number> =>
  new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });

describe('command line', () => {
  it('should say where to begin when nothing is asked', async () => {
    const { code, lines } = await runProgram([]);
    expect(code).toBe(0);
    expect(lines.join('\n')).toContain('pinwalk walk --link virtual:demo');
  });

  it.each([
    [['walk'], 2, '--link virtual:demo'],
    [['walk', '--link', 'serial:'], 2, 'the port is missing'],
    [['walk', '--link', 'virtual:demmo'], 2, 'did you mean demo?'],
    [['walk', '--link', 'serial:/dev/null', '--profile', 'demo'], 2, '--driver'],
    [['walk', '--link', 'virtual:demo', '--profile', 'nowhere'], 3, 'nowhere'],
    [['walk', '--nonsense'], 2, '--nonsense'],
    [['press', '--link', 'virtual:demo'], 2, '--line'],
    [['press', '--link', 'virtual:demo', '--line', 'LANE9'], 2, 'carries a line "LANE9"'],
    [['press', '--link', 'virtual:demo', '--line', 'LANE1_P', '--part', ''], 2, 'name of a part'],
    [['rerun', '/nonexistent.jsonl', '--profile', 'demo'], 3, 'nonexistent'],
    [['check'], 2, '--list'],
    [['check', profile, '/nonexistent.json'], 3, 'nonexistent'],
    [['bench'], 2, '--pty'],
    [['frobnicate'], 2, 'frobnicate'],
  ])('should answer %j with exit code %i and a line that helps', async (args, exitCode, says) => {
    const { code, lines, stderr } = await runProgram(args as string[]);
    expect(code).toBe(exitCode);
    expect(`${stderr}${lines.join('\n')}`).toContain(says);
    expect(stderr).not.toContain('    at ');
  });

  it.each(['pads', 'share', 'profile'])(
    'should answer %s alone with its help and nothing more',
    async (name) => {
      const { code, stderr } = await runProgram([name]);
      expect(code).toBe(2);
      expect(stderr).toContain(`Usage: pinwalk ${name}`);
      expect(stderr).not.toContain('outputHelp');
    },
  );

  it('should exit with the same code when nobody reads its diagnostics any more', async () => {
    // The far end of standard error is closed before anything is written to it.
    const { child, ended } = startProgram(['report', '/nonexistent.jsonl']);
    child.stderr?.destroy();
    expect((await ended).code).toBe(3);
  });

  it('should exit with 4 when the link was never there', async () => {
    const link = `tcp://127.0.0.1:${await closedPort()}`;
    const session = join(temporaryFolder(), 'session.jsonl');
    const { code, stderr } = await runProgram([
      ...['walk', '--link', link, '--driver', 'scpi-read', '--profile', profile],
      '--cautions-confirmed',
      ...['--session', session],
    ]);
    expect(code).toBe(4);
    expect(stderr).toContain('127.0.0.1');
  });

  it('should exit with 5 when the session file cannot be made, and never overwrite one', async () => {
    const session = join(temporaryFolder(), 'session.jsonl');
    writeFileSync(session, 'mine\n');
    const { code, stderr } = await runProgram([
      ...['walk', '--link', 'virtual:demo', '--session', session],
    ]);
    expect(code).toBe(5);
    expect(stderr).toContain(session);
  });

  it('should walk values piped on standard input', async () => {
    const session = join(temporaryFolder(), 'session.jsonl');
    const { code, lines } = await runProgram(
      ['walk', '--link', 'stdin:', '--profile', profile, '--session', session, '--plain'],
      { input: '0.1\n388\nOL\n0.2\n4.7k\n1.2k\n1.2k\n0.1\n' },
    );
    expect(code).toBe(0);
    const told = lines.join('\n');
    expect(told).toContain('2 D0_P: 388 Ω, normal');
    expect(told).toContain('3 D0_N: overload, open');
    expect(told).toContain('5 RESET: 4.70 kΩ, normal');
    expect(told).toContain('6 ENABLE: 1.20 kΩ, low');
    expect(told).toContain('All pins walked: 5 normal, 1 low, 1 open.');
  });

  it('should name the line of a reading log that is wrong', async () => {
    const log = join(temporaryFolder(), 'readings.jsonl');
    writeFileSync(
      log,
      '{"t":0,"function":"resistance","value":0.2}\n{"t":1,"function":"resistance","volts":2}\n',
    );
    const { code, stderr } = await runProgram(['rerun', log, '--profile', profile, '--json']);
    expect(code).toBe(3);
    expect(stderr).toContain(':2:');
    expect(stderr).toContain('unknown key "volts"');
  });
});

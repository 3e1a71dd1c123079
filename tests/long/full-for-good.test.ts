// A disk that stays full under a walk with nobody at the keyboard: it is waited for, and then the walk ends with 5.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runProgram, startProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const typeIs =
  (type: string) =>
  (line: string): boolean =>
    JSON.parse(line).type === type;

it('should end with 5, with everything told in the file, and be taken up at the same pin', async () => {
  const session = join(temporaryFolder(), 's.jsonl');
  const walk = startProgram([
    ...['walk', '--link', 'virtual:healthy?pace=steady&rate=20', '--profile', 'demo'],
    ...['--session', session, '--json', '--readings'],
  ]);
  await walk.line(typeIs('pin-judged'));
  const limit = readFileSync(session).length + 2000;
  execFileSync('prlimit', ['--pid', `${walk.child.pid}`, `--fsize=${limit}:`]);
  const { code, stderr } = await walk.ended;
  expect(code).toBe(5);
  expect(stderr).toMatch(/may not grow any larger; raise the limit on file size, then go on/u);
  const told = walk.lines.map((line) => JSON.parse(line));
  const stored = readFileSync(session, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => {
      const { prev: _prev, ...event } = JSON.parse(line);
      return event;
    });
  expect(stored).toEqual(told);
  expect(told.length).toBeGreaterThan(20);

  const resumed = startProgram(['walk', '--resume', session, '--json']);
  const again = JSON.parse(await resumed.line(typeIs('pin-reached')));
  expect(again.pin).toBe(told.findLast(({ type }) => type === 'pin-reached').pin);
  await resumed.line(typeIs('link-changed'));
  resumed.child.kill('SIGTERM');
  expect((await resumed.ended).code).toBe(0);
  expect((await runProgram(['check', session])).code).toBe(0);
}, 120_000);

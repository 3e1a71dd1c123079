import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { runProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

it('should tell what failed, pass over what is broken, and learn priors from it', async () => {
  const folder = temporaryFolder();
  const sessions = fileURLToPath(new URL('../../recordings/sessions', import.meta.url));
  copyFileSync(join(sessions, 'loose-filter.jsonl'), join(folder, 'a.jsonl'));
  copyFileSync(join(sessions, 'healthy-board.jsonl'), join(folder, 'b.jsonl'));
  writeFileSync(join(folder, 'c.jsonl'), '\u001b[31mnot a session');

  const left = await runProgram(['history', folder]);
  expect(left.code).toBe(0);
  expect(left.lines.at(-1)).toContain('2 simulated left out');
  expect(left.stderr).toMatch(/c\.jsonl: passed over: line 1: there is no session in it/u);
  expect(left.stderr).not.toContain('\u001b');

  const told = await runProgram(['history', folder, '--simulated']);
  expect(told.lines[1]).toMatch(/^demo +not noted +FL2 +0 +1 +0$/u);
  expect(told.lines[2]).toBe('demo: 2 boards done, the cause known of 1.');

  const out = join(folder, 'demo-shop.json');
  const options = ['--simulated', '--profile', 'demo', '--out', out, '--json'];
  const learned = await runProgram(['history', folder, ...options]);
  expect(learned.code).toBe(0);
  const prior = learned.lines
    .map((line) => JSON.parse(line))
    .find(({ place, type }) => type === 'prior-learned' && place === 'FL2');
  expect(prior).toMatchObject({ faults: 1, boards: 2 });
  expect(prior.now).toBeGreaterThan(prior.before);
  expect(JSON.parse(readFileSync(out, 'utf8')).parts.FL2.prior).toBe(prior.now);
  expect((await runProgram(['check', out])).code).toBe(0);
}, 90_000);

it('should never put a profile in the place of a session, whatever its name', async () => {
  const folder = temporaryFolder();
  const recorded = new URL('../../recordings/sessions/loose-filter.jsonl', import.meta.url);
  const session = join(folder, 'session.json');
  copyFileSync(fileURLToPath(recorded), session);
  const before = readFileSync(session);
  const options = ['--simulated', '--profile', 'demo', '--out', session, '--force'];
  const { code, stderr } = await runProgram(['history', folder, ...options]);
  expect(code).toBe(5);
  expect(stderr).toMatch(/session\.json is a session, which is never replaced/u);
  expect(readFileSync(session).equals(before)).toBe(true);
});

it('should say that there is nothing yet before the first session is saved', async () => {
  const env = { XDG_DATA_HOME: temporaryFolder() };
  const { code, lines, stderr } = await runProgram(['history'], { env });
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  expect(lines.join('\n')).toContain('0 sessions counted');
});

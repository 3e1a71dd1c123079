// From values piped in to a page in hand: the built program walks, reports and checks, and the three agree.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { runProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const profile = fileURLToPath(new URL('../fixtures/short-row.json', import.meta.url));

it('should walk, report and verify', async () => {
  const folder = temporaryFolder();
  const session = join(folder, 'session.jsonl');
  const walked = await runProgram(
    ['walk', '--link', 'stdin:', '--profile', profile, '--session', session, '--plain'],
    { input: '0.1\n388\nOL\n0.2\n4.7k\n1.2k\n1.2k\n0.1\n' },
  );
  expect(walked.code).toBe(0);

  const reported = await runProgram(['report', session]);
  expect(reported).toMatchObject({ code: 0, stderr: '' });
  const html = readFileSync(join(folder, 'session.html'), 'utf8');
  expect(html).toContain('2 of 7 pins do not read as on a good board.');
  expect(html).toContain('The readings were typed in by hand.');

  const checked = await runProgram(['check', session, '--json']);
  const { fingerprint } = JSON.parse(checked.lines[0] ?? '{}');
  expect(fingerprint).toMatch(/^[0-9a-f]{64}$/u);
  expect(html).toContain(fingerprint);

  const again = await runProgram(['report', session]);
  expect(again.code).toBe(5);
  expect(again.stderr).toContain('--force');
  const refused = await runProgram(['report', profile]);
  expect(refused).toMatchObject({ code: 3, lines: [] });
});

// The configuration as a user meets it: options before the file, the file before what is usual.
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeEach, describe, expect, it } from 'vitest';
import { runProgram } from '../support/run-program.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const profile = fileURLToPath(new URL('../fixtures/short-row.json', import.meta.url));
const values = '0.1\n388\nOL\n0.2\n4.7k\n1.2k\n1.2k\n0.1\n';

describe('configuration', () => {
  let folder: string;
  let env: Record<string, string>;
  beforeEach(() => {
    folder = temporaryFolder();
    env = { XDG_CONFIG_HOME: join(folder, 'c'), XDG_DATA_HOME: join(folder, 'd'), HOME: folder };
  });

  const put = (config: object, path = join(folder, 'c/pinwalk/config.json')): string => {
    mkdirSync(join(path, '..'), { recursive: true });
    writeFileSync(path, JSON.stringify({ format: 'pinwalk-config/1', ...config }, null, 1));
    return path;
  };

  it('should say what a walk is not told, and where it is saved', async () => {
    put({ link: 'stdin:', profile, dataFolder: 'shop-data' });
    const { code, lines, stderr } = await runProgram(['walk', '--plain'], { input: values, env });
    expect([code, stderr]).toEqual([0, expect.any(String)]);
    expect(lines.join('\n')).toContain('6 ENABLE: 1.20 kΩ, low');
    expect(readdirSync(join(folder, 'c/pinwalk/shop-data/sessions'))).toHaveLength(1);
    expect(existsSync(join(folder, 'd/pinwalk'))).toBe(false);
  });

  it('should give way to an option, and to another file named by --config', async () => {
    put({ link: 'stdin:', profile: 'nowhere' });
    const session = join(folder, 's.jsonl');
    const walk = ['walk', '--plain', '--session', session];
    const failed = await runProgram(walk, { input: values, env });
    expect(failed.code).toBe(3);
    expect(failed.stderr).toContain('nowhere');
    const other = put({ link: 'stdin:', profile: 'nowhere-else' }, join(folder, 'two.json'));
    const elsewhere = await runProgram([...walk, '--config', other], { input: values, env });
    expect(elsewhere.stderr).toContain('nowhere-else');
    const told = await runProgram([...walk, '--profile', profile], { input: values, env });
    expect(told.code).toBe(0);
  }, 120_000);

  it('should stop every command at a slip, with its line, and tell where the file is', async () => {
    const path = put({ cuse: 'off' });
    const { code, stderr } = await runProgram(['walk', '--link', 'virtual:demo'], { env });
    expect(code).toBe(3);
    expect(stderr).toContain(`${path}:3: error: cuse: the key "cuse" is not known here`);
    expect(stderr).toContain('did you mean "cues"?');
  });

  it('should show what holds, from where, and write one to begin with', async () => {
    const before = await runProgram(['config'], { env });
    expect(before.lines[0]).toContain('not there');
    const begun = await runProgram(['config', '--init'], { env });
    expect(begun.code).toBe(0);
    const { lines } = await runProgram(['config', '--json'], { env });
    const shown = lines.map((line) => JSON.parse(line));
    expect(shown).toContainEqual({ key: 'reportLanguage', value: 'en', from: 'file' });
    expect(shown).toContainEqual({ key: 'cues', value: null, from: 'usual' });
    expect((await runProgram(['config', '--init'], { env })).code).toBe(5);
    const { lines: explained } = await runProgram(['config', '--explain'], { env });
    expect(explained).toHaveLength(shown.length - 1);
  }, 120_000);
});

// The walls between rooms: the linter holds them, and here it is shown that it would notice a breach.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../support/temporary-folder.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const rulesPath = join(root, 'tests/tooling/biome-rules.json');

const breaches: readonly (readonly [file: string, text: string])[] = [
  ['src/core/a.ts', "import { b } from '../link/b.js';\nexport const a = b;\n"],
  [
    'src/core/walk/a.ts',
    "import { readFileSync } from 'node:fs';\nexport const a = readFileSync;\n",
  ],
  ['src/core/a.ts', 'export const a = Date.now();\n'],
  ['src/core/a.ts', 'export const a = process.env;\n'],
  ['src/session/a.ts', "import { b } from '../store/b.js';\nexport const a = b;\n"],
  ['src/link/a.ts', "import { b } from '../store/b.js';\nexport const a = b;\n"],
  ['src/store/a.ts', "import { b } from '../bench/b.js';\nexport const a = b;\n"],
  ['src/ui/parts/a.ts', "import { b } from '../../link/b.js';\nexport const a = b;\n"],
  ['src/share/a.ts', "import { b } from '../store/b.js';\nexport const a = b;\n"],
  ['src/report/a.ts', "import { b } from '../share/b.js';\nexport const a = b;\n"],
  ['src/bench/a.ts', "import { b } from '../commands/b.js';\nexport const a = b;\n"],
];

const lintsClean = (file: string, text: string): boolean => {
  const folder = temporaryFolder();
  const rules = JSON.parse(readFileSync(rulesPath, 'utf8'));
  writeFileSync(join(folder, 'rules.json'), JSON.stringify({ ...rules, vcs: { enabled: false } }));
  mkdirSync(dirname(join(folder, file)), { recursive: true });
  writeFileSync(join(folder, file), text);
  try {
    const biome = join(root, 'node_modules/.bin/biome');
    execFileSync(biome, ['lint', `--config-path=${folder}/rules.json`, '.'], {
      cwd: folder,
      stdio: 'pipe',
    });
    return true;
  } catch (error) {
    const { stdout, stderr } = error as { stdout?: unknown; stderr?: unknown };
    const said = `${stdout}${stderr}`;
    if (!said.includes(file)) throw error;
    return false;
  }
};

const sources = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/u.test(name))
    .map((name) => join(folder, name));

/** What no rule of the linter catches: chance in a room that must have none. */
const usesChance = (text: string): boolean => /\bMath\s*\.\s*random\b/u.test(text);

describe('walls between rooms', () => {
  it.each(breaches)('should be held by the linter: %s, %j', (file, text) => {
    expect(lintsClean(file, text)).toBe(false);
  });

  it('should let a sound file pass', () => {
    expect(
      lintsClean('src/link/a.ts', "import { b } from '../core/b.js';\nexport const a = b;\n"),
    ).toBe(true);
  });

  it('should keep chance out of the core', () => {
    const files = sources(join(root, 'src/core'));
    const guilty = files.filter((file) => usesChance(readFileSync(file, 'utf8')));
    expect(files.length).toBeGreaterThan(50);
    expect(guilty.map((file) => relative(root, file))).toEqual([]);
    expect(usesChance('const a = Math.random();')).toBe(true);
  });
});

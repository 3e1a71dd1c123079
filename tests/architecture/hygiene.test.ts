// What others' code may do here, and by which doors text leaves: told in DEVELOPERS.md, held here.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compilePattern } from '../../src/core/meter/line-pattern.js';

const root = new URL('../../', import.meta.url);
const text = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const filesIn = (folder: string): readonly string[] =>
  readdirSync(new URL(folder, root), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => `${parentPath}/${name}`.slice(root.pathname.length));

interface Locked {
  readonly dev?: boolean;
  readonly hasInstallScript?: boolean;
  readonly integrity?: string;
  readonly license?: string;
}
const packages = Object.entries(
  (JSON.parse(text('package-lock.json')) as { packages: Record<string, Locked> }).packages,
).filter(([path]) => path !== '');
const runtime = packages.filter(([, { dev }]) => dev !== true);

describe('packages', () => {
  it('should be known by the hash of their content, all of them', () => {
    expect(packages.filter(([, { integrity }]) => !integrity?.startsWith('sha512-'))).toEqual([]);
    expect(runtime.length).toBeGreaterThan(20);
  });

  it('should run nothing when they are installed, but for the serial port, which comes prebuilt', () => {
    const scripted = runtime.filter(([, { hasInstallScript }]) => hasInstallScript === true);
    expect(scripted.map(([path]) => path)).toEqual(['node_modules/@serialport/bindings-cpp']);
    expect(filesIn('node_modules/@serialport/bindings-cpp/prebuilds/linux-x64/').length).toBe(2);
  });

  it('should be free to use and pass on', () => {
    const others = runtime.filter(([, { license }]) => !/^\(?(MIT|ISC)\b/u.test(license ?? ''));
    expect(others).toEqual([]);
  });

  it('should each be told with what they carry', () => {
    const table = text('DEVELOPERS.md').split('## Dependencies')[1]?.split('\n## ')[0] ?? '';
    const named = Object.keys(JSON.parse(text('package.json')).dependencies);
    expect(named.filter((name) => !new RegExp(`^\\|.*\\b${name}\\b`, 'mu').test(table))).toEqual(
      [],
    );
  });
});

describe('the program itself', () => {
  const sources = filesIn('src').filter((path) => /\.tsx?$/u.test(path));

  it('should make no code of text, and give no text to a shell', () => {
    const risky = /\beval\(|new Function\(|\bexecSync\(|shell: true|node:vm/u;
    expect(sources.filter((path) => risky.test(text(path)))).toEqual([]);
    expect(sources.length).toBeGreaterThan(300);
  });

  it('should print by one door', () => {
    const printing = sources.filter((path) => /process\.std(out|err)\.write\(/u.test(text(path)));
    expect(printing).toEqual(['src/commands/say.ts']);
  });

  it('should bring no sound, font or program of anybody', () => {
    const binaries = /\.(wav|mp3|ogg|flac|ttf|otf|woff2?|eot|exe|dll|so|node|wasm)$/iu;
    const brought = ['src', 'drivers', 'profiles', 'recordings', 'tests'].flatMap(filesIn);
    expect(brought.filter((path) => binaries.test(path))).toEqual([]);
  });
});

describe('a pattern in a driver file', () => {
  it.each(['(a+)+b', '(a|a)*b', '(a*)*b', '(.*a){20}b', '((a?){30}a{30})'])(
    'should take no time to speak of on a long line: %s',
    (source) => {
      const pattern = compilePattern(source);
      const from = performance.now();
      pattern.match('a'.repeat(4096));
      expect(performance.now() - from).toBeLessThan(1000);
    },
  );

  it.each(['(?=a)', '(?<!a)b', '(a)\\1'])('should be refused where it could: %s', (source) => {
    expect(() => compilePattern(source)).toThrow(SyntaxError);
  });
});

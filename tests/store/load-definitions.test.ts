import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { FileError } from '../../src/store/file-error.js';
import {
  definitionFolders,
  listDefinitions,
  loadDriver,
  loadDriverById,
  loadProfile,
} from '../../src/store/load-definitions.js';
import { temporaryFolder } from './sample-session.js';

let folder: ReturnType<typeof temporaryFolder>;
let folders: readonly string[];
beforeEach(() => {
  folder = temporaryFolder();
  for (const name of ['shop', 'shipped']) mkdirSync(folder.path(name));
  folders = [folder.path('shop'), folder.path('shipped')];
});
afterEach(() => folder.remove());

const small = (id: string, title = 'Small'): string =>
  JSON.stringify({
    format: 'pinwalk-profile/1',
    id,
    title,
    provenance: { by: 'a test', date: '2026-01-31', how: 'invented' },
    measure: { function: 'resistance', polarity: 'red-walks' },
    connector: { id: 'J1', pins: [{ pin: '1', line: 'GND' }] },
    lines: { GND: { kind: 'ground' } },
  });

const put = (name: string, text: string): string => {
  const path = folder.path(name);
  writeFileSync(path, text);
  return path;
};

describe('loading a profile', () => {
  it('should find it by id, with the hash of its bytes and its warnings', () => {
    const path = put('shipped/small.json', small('small'));
    const found = loadProfile('small', folders);
    expect(found).toMatchObject({ id: 'small', path, content: { title: 'Small' } });
    expect(found.sha256).toBe(createHash('sha256').update(readFileSync(path)).digest('hex'));
    expect(found.warnings).toMatchObject([{ level: 'warning', line: 1 }]);
  });

  it("should take the shop's own before the shipped one", () => {
    put('shipped/small.json', small('small', 'shipped'));
    put('shop/small.json', small('small', 'own'));
    expect(loadProfile('small', folders).content.title).toBe('own');
    expect(listDefinitions('profile', undefined, folders)).toMatchObject([
      { content: { title: 'own' } },
    ]);
  });

  it('should refuse a name that is shipped and in the library, until it is clear which is meant', () => {
    mkdirSync(folder.path('library'));
    const all = [...folders, folder.path('library')];
    put('library/small.json', small('small', 'of the library'));
    expect(loadProfile('small', all).content.title).toBe('of the library');
    put('shipped/small.json', small('small'));
    expect(() => loadProfile('small', all)).toThrow(
      /more than one profile has this name: .*shipped.* and .*library.*; give the path/u,
    );
    put('library/small.json', small('small'));
    expect(loadProfile('small', all).path).toContain('shipped');
    put('library/small.json', small('small', 'of the library'));
    put('shop/small.json', small('small', 'own'));
    expect(loadProfile('small', all).content.title).toBe('own');
  });

  it('should find it by path, whatever the file is called', () => {
    const path = put('any name.json', small('small'));
    expect(loadProfile(path, folders).id).toBe('small');
  });

  it.each([
    ['samll', /^samll: error: there is no profile of this name; did you mean "small"\?$/],
    ['other-board', /known are "blue", "small"; or give a file/],
    ['', /there is no profile of this name/],
    ['\u001b[2J', /^[^\p{Cc}]*there is no profile/u],
    ['./none.json', /none\.json: error: there is no such file; check the path/],
  ])('should answer "%s" with what to type next', (id, says) => {
    put('shipped/small.json', small('small'));
    put('shipped/blue.json', small('blue'));
    expect(() => loadProfile(id, folders)).toThrow(says);
  });

  it('should give every problem of a file with its line', () => {
    const slips = small('bad').replace('"title"', '\n"titel"').replace('"kind"', '\n"knid"');
    const path = put('shipped/bad.json', slips);
    let failure: FileError | undefined;
    try {
      loadProfile('bad', folders);
    } catch (error) {
      failure = error as FileError;
    }
    expect(failure?.problems).toHaveLength(4);
    expect(failure?.message.split('\n')).toContain(
      `${path}:3: error: lines.GND.knid: the key "knid" is not known here; did you mean "kind"?`,
    );
  });

  it('should hold a file to its name', () => {
    put('shipped/wrong.json', small('right'));
    expect(() => loadProfile('wrong', folders)).toThrow(/the id is "right", but the file is named/);
  });
});

describe('loading a driver', () => {
  it('should refuse a profile in its place', () => {
    const path = put('p.json', small('small'));
    expect(() => loadDriver(path, folders)).toThrow(
      /"pinwalk-profile\/1" is not the format of a driver; a driver has "format": "pinwalk-driver\/1"/,
    );
  });

  it.each(['../outside', '..', '/etc/passwd', 'x/../../outside', 'outside.json', 'C:\\x'])(
    'should not let the id "%s" lead out of its folders',
    (id) => {
      const [driver] = listDefinitions('driver');
      copyFileSync(driver?.path ?? '', folder.path('outside.json'));
      expect(() => loadDriverById(id, folders)).toThrow(/there is no driver of this name/);
    },
  );
});

describe('listing', () => {
  it('should hand over what cannot be used, and go on', () => {
    put('shop/a.json', small('a'));
    put('shop/broken.json', '{');
    put('shop/schema.schema.json', '{}');
    put('shop/notes.txt', 'x');
    const broken: FileError[] = [];
    const found = listDefinitions('profile', (error) => broken.push(error), folders);
    expect(found.map(({ id }) => id)).toEqual(['a']);
    expect(broken.map(({ path }) => path)).toEqual([folder.path('shop/broken.json')]);
  });

  it('should bear folders that are not there', () => {
    expect(listDefinitions('driver', undefined, [folder.path('none')])).toEqual([]);
  });

  it.each(['driver', 'profile'] as const)('should show every shipped %s, none broken', (word) => {
    const broken: FileError[] = [];
    const shipped = definitionFolders(`${word}s`).slice(1);
    const found = listDefinitions(word, (error) => broken.push(error), shipped);
    expect(broken).toEqual([]);
    expect(found.length).toBeGreaterThanOrEqual(2);
    for (const { id, path } of found) expect(path.endsWith(`${word}s/${id}.json`)).toBe(true);
  });
});

import { execFileSync } from 'node:child_process';
import { closeSync, mkdirSync, writeFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { openToRead } from '../../src/store/open-to-read.js';
import { readTextFile } from '../../src/store/read-text-file.js';
import { temporaryFolder } from './sample-session.js';

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

it('should open a file', () => {
  writeFileSync(folder.path('f'), 'x');
  closeSync(openToRead(folder.path('f')));
});

it.each<[string, () => string, RegExp]>([
  ['what is not there', () => folder.path('none'), /there is no such file; check the path/],
  [
    'a folder',
    () => {
      mkdirSync(folder.path('d'));
      return folder.path('d');
    },
    /this is a folder; give a file/,
  ],
  [
    'a way through a file',
    () => {
      writeFileSync(folder.path('f'), '');
      return folder.path('f/g');
    },
    /part of the path is a file/,
  ],
  [
    'a name with a control character',
    () => folder.path('\u001b[2J'),
    /^[^\p{Cc}]*there is no such/u,
  ],
])('should refuse %s in one line', (_, prepare, says) => {
  const path = prepare();
  const failure = (): void => void openToRead(path);
  expect(failure).toThrow(expect.objectContaining({ name: 'FileError' }));
  expect(failure).toThrow(says);
  expect(failure).toThrow(/^[^\n]*$/u);
});

it.skipIf(process.platform === 'win32')(
  'should refuse a pipe without waiting for its other end',
  () => {
    execFileSync('mkfifo', [folder.path('pipe')]);
    expect(() => openToRead(folder.path('pipe'))).toThrow(/this is not a regular file/);
  },
);

it.each<[string, Uint8Array, RegExp]>([
  ['UTF-16', Buffer.from('\uFEFF{"a":1}', 'utf16le'), /saved as UTF-16; save it as UTF-8/],
  [
    'Latin-1',
    Buffer.from('{\n"a":"µ"}', 'latin1'),
    /:2: error: the line holds bytes that are not UTF-8/,
  ],
  ['one stray byte', Uint8Array.of(0xff), /:1: error: the line holds bytes/],
  ['a file beyond measure', Buffer.alloc(2 * 1024 * 1024 + 1, 0x20), /larger than 2 MB/],
])('should refuse %s as text', (_, bytes, says) => {
  writeFileSync(folder.path('f'), bytes);
  expect(() => readTextFile(folder.path('f'))).toThrow(says);
});

it('should give text with the hash of its bytes', () => {
  writeFileSync(folder.path('f'), 'abc');
  expect(readTextFile(folder.path('f'))).toEqual({
    text: 'abc',
    // FIPS 180-4 example message; digest from memory, recomputed.
    sha256: 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
  });
});

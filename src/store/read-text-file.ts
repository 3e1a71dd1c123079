// The whole text of a file small enough to be one somebody wrote, with the hash of its bytes. Refuses what is too
// large and what is not UTF-8.
import { isUtf8 } from 'node:buffer';
import { hash } from 'node:crypto';
import { closeSync, fstatSync, readSync } from 'node:fs';
import type { Problem } from '../core/problems.js';
import { FileError } from './file-error.js';
import { openToRead } from './open-to-read.js';

export interface TextFile {
  readonly text: string;
  /** 64 hex digits over the bytes as they lie on the disk. */
  readonly sha256: string;
}

const largest = 2 * 1024 * 1024;

/** @throws FileError */
export const readTextFile = (path: string): TextFile => {
  const bytes = readAtMost(path, largest + 1);
  const refuse = (problem: Problem): FileError => new FileError(path, [problem]);
  if (bytes.length > largest) {
    const what = `the file is larger than ${largest / 1024 / 1024} MB`;
    throw refuse({ path: [], what, fix: 'this is no driver or profile; give another file' });
  }
  if (!isUtf8(bytes)) throw refuse({ path: [], ...placeOfBadText(bytes) });
  return { text: bytes.toString('utf8'), sha256: hash('sha256', bytes, 'hex') };
};

const placeOfBadText = (bytes: Buffer): { line?: number; what: string; fix: string } => {
  const fix = 'save it as UTF-8';
  const mark = bytes.toString('hex', 0, 2);
  if (mark === 'fffe' || mark === 'feff') return { what: 'the file is saved as UTF-16', fix };
  let line = 1;
  for (let from = 0; ; line += 1) {
    const end = bytes.indexOf(0x0a, from);
    if (end === -1 || !isUtf8(bytes.subarray(from, end))) break;
    from = end + 1;
  }
  return { line, what: 'the line holds bytes that are not UTF-8 text', fix };
};

/** The first bytes of a file, up to `limit`. @throws FileError */
export const readAtMost = (path: string, limit: number): Buffer => {
  const fd = openToRead(path);
  try {
    const buffer = Buffer.alloc(Math.min(limit, fstatSync(fd).size + 1));
    let filled = 0;
    while (filled < buffer.length) {
      const read = readSync(fd, buffer, filled, buffer.length - filled, null);
      if (read === 0) break;
      filled += read;
    }
    return buffer.subarray(0, filled);
  } finally {
    closeSync(fd);
  }
};

// The hash of a file of any size, read piece by piece: a photo is known by it, wherever it lies.
import { createHash } from 'node:crypto';
import { closeSync, readSync } from 'node:fs';
import { openToRead } from './open-to-read.js';

export interface FileHash {
  /** 64 hex digits over the bytes. */
  readonly sha256: string;
  readonly bytes: number;
}

const pieceBytes = 256 * 1024;

/** @throws FileError when there is no such file, or it is a folder or a device. */
export const hashFile = (path: string): FileHash => {
  const fd = openToRead(path);
  try {
    const hash = createHash('sha256');
    const piece = Buffer.alloc(pieceBytes);
    let bytes = 0;
    for (let read = readSync(fd, piece); read > 0; read = readSync(fd, piece)) {
      hash.update(piece.subarray(0, read));
      bytes += read;
    }
    return { sha256: hash.digest('hex'), bytes };
  } finally {
    closeSync(fd);
  }
};

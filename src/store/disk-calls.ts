// The calls through which the session file reaches the disk, in one place, so that a test can stand in for a disk
// that fills up, writes half a line or fails a sync.
import { closeSync, fsync, fsyncSync, ftruncateSync, openSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';

export interface DiskCalls {
  /** Writes from `offset` to the end of `bytes`, or part of it. @returns how many bytes were written. */
  write(fd: number, bytes: Uint8Array, offset: number): number;
  truncate(fd: number, size: number): void;
  sync(fd: number): Promise<void>;
}

export const realDisk: DiskCalls = {
  write: (fd, bytes, offset) => writeSync(fd, bytes, offset),
  truncate: ftruncateSync,
  sync: (fd) =>
    new Promise((resolve, reject) => {
      fsync(fd, (error) => (error === null ? resolve() : reject(error)));
    }),
};

/** @throws the disk's own error; part of the bytes may then be in the file. */
export const writeWhole = (disk: DiskCalls, fd: number, bytes: Uint8Array): void => {
  for (let done = 0; done < bytes.length; ) {
    const count = disk.write(fd, bytes, done);
    if (count <= 0) throw Object.assign(new Error('nothing was written'), { code: 'ENOSPC' });
    done += count;
  }
};

/** File systems that cannot sync a folder say so with these. */
const notMeant: ReadonlySet<string | undefined> = new Set([
  'EINVAL',
  'ENOTSUP',
  'EISDIR',
  'EPERM',
  'EACCES',
]);

/** Puts the folder's own entry for a new file on the disk. */
export const syncFolderOf = (path: string): void => {
  try {
    const fd = openSync(dirname(path), 'r');
    try {
      fsyncSync(fd);
    } finally {
      closeSync(fd);
    }
  } catch (error) {
    if (!notMeant.has((error as NodeJS.ErrnoException).code)) throw error;
  }
};

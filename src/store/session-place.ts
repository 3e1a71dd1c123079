// The open session file and the place where it should lie. Notices when it was deleted, moved, replaced or changed
// by someone else while it is being written, and puts it back from the open descriptor, which still holds it whole.
import { closeSync, fstatSync, fsyncSync, openSync, readSync, rmSync, statSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { type DiskCalls, syncFolderOf, writeWhole } from './disk-calls.js';
import { JournalError, journalErrorFrom } from './journal-error.js';
import type { SessionLock } from './session-lock.js';

export class SessionPlace {
  #fd: number;

  constructor(
    readonly path: string,
    fd: number,
    readonly lock: SessionLock,
    readonly disk: DiskCalls,
  ) {
    this.#fd = fd;
  }

  get fd(): number {
    return this.#fd;
  }

  /** What is wrong with the file itself; cheap enough to look before every write. */
  faultInFile(size: number): JournalError | undefined {
    const state = fstatSync(this.#fd);
    if (state.nlink === 0) return this.#removed('it was deleted');
    if (state.size === size) return undefined;
    return new JournalError(
      'changed',
      this.path,
      'another program changed it while it was being written',
      'look at it with `pinwalk check`, then begin a new session',
    );
  }

  /** What is wrong with the path: whether it still leads to the file being written. */
  async faultInPlace(): Promise<JournalError | undefined> {
    const fd = this.#fd;
    const there = await stat(this.path, { bigint: true }).catch(() => undefined);
    if (fd !== this.#fd) return undefined;
    if (there === undefined) return this.#removed('it was deleted or moved away');
    const own = fstatSync(fd, { bigint: true });
    if (there.ino === own.ino && there.dev === own.dev) return undefined;
    return new JournalError(
      'replaced',
      this.path,
      'another file stands in its place',
      'move that one away; going on then puts this session back whole',
    );
  }

  /**
   * Copies the first `size` bytes, which the open descriptor still holds, to a new file in the old place and
   * goes on with that. Does nothing when the path leads to the file again.
   * @throws JournalError
   */
  putBack(size: number, whenOldIsIdle: Promise<void>): void {
    const own = fstatSync(this.#fd, { bigint: true });
    const there = statSync(this.path, { bigint: true, throwIfNoEntry: false });
    if (there?.ino === own.ino && there.dev === own.dev) return;
    const fd = openNew(this.path);
    try {
      copyBytes(this.#fd, fd, size, this.disk);
      fsyncSync(fd);
      this.lock.renew();
      syncFolderOf(this.path);
    } catch (error) {
      closeSync(fd);
      rmSync(this.path, { force: true });
      throw journalErrorFrom(this.path, error);
    }
    const old = this.#fd;
    this.#fd = fd;
    void whenOldIsIdle.then(() => closeSync(old));
  }

  close(): void {
    closeSync(this.#fd);
    this.lock.release();
  }

  #removed(what: string): JournalError {
    const fix = 'going on puts it back whole';
    return new JournalError('removed', this.path, `${what} while it was being written`, fix);
  }
}

/** A new file for appending and reading, at a path where there is none. @throws JournalError */
export const openNew = (path: string): number => {
  try {
    return openSync(path, 'ax+');
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw code === 'EEXIST' && statSync(path).isDirectory()
      ? new JournalError('not-a-file', path, 'this is a folder', 'give the name of a file')
      : journalErrorFrom(path, error);
  }
};

const copyBytes = (from: number, to: number, size: number, disk: DiskCalls): void => {
  const buffer = Buffer.alloc(64 * 1024);
  for (let at = 0; at < size; ) {
    const read = readSync(from, buffer, 0, Math.min(buffer.length, size - at), at);
    if (read === 0) throw new Error('the file is shorter than what was written');
    writeWhole(disk, to, buffer.subarray(0, read));
    at += read;
  }
};

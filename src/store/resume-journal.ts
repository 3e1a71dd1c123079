// Opens a session file to go on where it stopped, after a kill, a crash or a closed session. Nothing is erased: an
// unfinished last line stays in the file, closed off, as a torn line that the chain covers and readers know.
import { closeSync, constants, fstatSync, openSync, realpathSync } from 'node:fs';
import type { Numbered } from '../core/events.js';
import { type DiskCalls, realDisk } from './disk-calls.js';
import { JournalError, journalErrorFrom } from './journal-error.js';
import { readSession, type SessionEnd } from './journal-reader.js';
import { JournalWriter } from './journal-writer.js';
import { openToRead } from './open-to-read.js';
import { lockSession, type SessionLock } from './session-lock.js';
import { SessionPlace } from './session-place.js';

export interface ResumedJournal {
  /** Every event of a known type, in order. */
  readonly events: readonly Numbered[];
  /** Time of the last event, in seconds. */
  readonly lastT: number;
  /**
   * Bytes of an unfinished event found at the end. They stay in the file; the first event appended must be
   * `session-resumed` and carry this number, by which readers know the torn line.
   */
  readonly tornBytes: number;
  readonly journal: JournalWriter;
  /** For the technician, in words: what was found and done. */
  readonly notices: readonly string[];
}

/**
 * Opens a session file to go on in it.
 * @throws FileError when it is not there or damaged, with the line; JournalError when it cannot be written.
 */
export const resumeJournal = (path: string, disk: DiskCalls = realDisk): ResumedJournal => {
  const fd = openToAppend(path);
  let lock: SessionLock | undefined;
  try {
    const realPath = realpathSync(path);
    lock = lockSession(realPath);
    const events: Numbered[] = [];
    const end = readInto(events, realPath);
    const { chain } = end;
    if (chain === undefined || fstatSync(fd).size !== end.size) {
      throw new JournalError('changed', path, 'it changed while it was being read', 'try again');
    }
    const journal = new JournalWriter(new SessionPlace(realPath, fd, lock, disk), {
      ...end,
      chain,
    });
    const { lastT, tornBytes } = end;
    return { events, lastT, tornBytes, journal, notices: noticesFor(lock, end) };
  } catch (error) {
    closeSync(fd);
    lock?.release();
    throw error;
  }
};

const openToAppend = (path: string): number => {
  closeSync(openToRead(path));
  try {
    return openSync(path, constants.O_RDWR | constants.O_APPEND);
  } catch (error) {
    throw journalErrorFrom(path, error);
  }
};

const readInto = (events: Numbered[], path: string): SessionEnd => {
  const found = readSession(path);
  for (;;) {
    const { done, value } = found.next();
    if (done === true) return value;
    events.push(value);
  }
};

const noticesFor = (lock: SessionLock, { tornBytes, tornLine }: SessionEnd): string[] => {
  const notices = lock.notice === undefined ? [] : [lock.notice];
  if (tornBytes > 0) {
    const bytes = tornBytes === 1 ? 'byte' : 'bytes';
    notices.push(
      `line ${tornLine} holds ${tornBytes} ${bytes} of an event that was never finished; they are kept as they are`,
    );
  }
  return notices;
};

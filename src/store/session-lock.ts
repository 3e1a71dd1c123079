// One program at a time on one session: a lock file beside it that names its holder. The lock of a process that
// has ended is taken over; when in doubt whether it has, the answer is no.
import {
  closeSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { cleanText } from '../core/clean-text.js';
import { JournalError, journalErrorFrom } from './journal-error.js';
import { processMark } from './process-mark.js';

export interface SessionLock {
  /** What was taken over, in words; undefined when the session was free. */
  readonly notice: string | undefined;
  /** Takes the lock anew if its file is gone. @throws JournalError when someone else has it. */
  renew(): void;
  release(): void;
}

interface Holder {
  readonly pid: number;
  readonly host: string;
  /** Tells two processes with one number apart, where the platform can. */
  readonly mark: string | null;
}

/** @throws JournalError when another program holds the session, or the lock cannot be made. */
export const lockSession = (sessionPath: string): SessionLock => {
  const path = `${sessionPath}.lock`;
  const own = JSON.stringify({
    pid: process.pid,
    host: hostname(),
    mark: processMark(process.pid) ?? null,
  } satisfies Holder);
  const notice = take(sessionPath, path, own);
  return {
    notice,
    renew: () => {
      if (textAt(path) !== own) take(sessionPath, path, own);
    },
    release: () => {
      if (textAt(path) === own) rmSync(path, { force: true });
    },
  };
};

const attempts = 3;

const take = (sessionPath: string, path: string, own: string): string | undefined => {
  let notice: string | undefined;
  for (let attempt = 0; attempt < attempts; attempt += 1) {
    if (create(sessionPath, path, own)) return notice;
    const found = textAt(path);
    if (found === undefined) continue;
    const holder = parseHolder(found);
    refuseIfHeld(sessionPath, path, holder);
    setAside(sessionPath, path, found);
    const who = holder === undefined ? 'a process' : `process ${holder.pid}`;
    notice = `the session was left by ${who}, which has ended; it is taken over`;
  }
  throw new JournalError('in-use', sessionPath, 'other programs reach for it', 'try again');
};

/** False when there is such a file already. */
const create = (sessionPath: string, path: string, own: string): boolean => {
  try {
    const fd = openSync(path, 'wx');
    writeSync(fd, own);
    closeSync(fd);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw journalErrorFrom(sessionPath, error);
  }
};

/** Of two programs that find the same stale lock only one can move it away. */
const setAside = (sessionPath: string, path: string, stale: string): void => {
  const aside = `${path}.${process.pid}`;
  try {
    renameSync(path, aside);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw journalErrorFrom(sessionPath, error);
  }
  if (textAt(aside) === stale) rmSync(aside, { force: true });
  else renameSync(aside, path);
};

/** A lock being written this very moment is still empty; one that stays so was cut off by a power failure. */
const emptyLockS = 5;

const refuseIfHeld = (sessionPath: string, path: string, holder: Holder | undefined): void => {
  const shownLock = cleanText(path, 300);
  if (holder === undefined) {
    if (ageInS(path) > emptyLockS) return;
    throw new JournalError(
      'in-use',
      sessionPath,
      'another program is opening it',
      `try again; if nothing uses it, delete ${shownLock}`,
    );
  }
  if (holder.host === hostname() && hasEnded(holder)) return;
  const host = holder.host === hostname() ? '' : ` on ${cleanText(holder.host, 60)}`;
  throw new JournalError(
    'in-use',
    sessionPath,
    `another program has it open (process ${holder.pid}${host})`,
    `close that one first; if process ${holder.pid} is not pinwalk, delete ${shownLock}`,
  );
};

const hasEnded = ({ pid, mark }: Holder): boolean => {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return true;
  }
  const current = processMark(pid);
  return mark !== null && current !== undefined && current !== mark;
};

const parseHolder = (text: string): Holder | undefined => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (typeof value !== 'object' || value === null) return undefined;
  const { pid, host, mark } = value as Record<string, unknown>;
  if (!Number.isSafeInteger(pid) || (pid as number) < 1 || typeof host !== 'string')
    return undefined;
  return { pid: pid as number, host, mark: typeof mark === 'string' ? mark : null };
};

const textAt = (path: string): string | undefined => {
  try {
    return readFileSync(path, 'utf8').slice(0, 1000);
  } catch {
    return undefined;
  }
};

const ageInS = (path: string): number => {
  const state = statSync(path, { throwIfNoEntry: false });
  return state === undefined ? Infinity : (Date.now() - state.mtimeMs) / 1000;
};

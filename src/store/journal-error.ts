// Why the session file could not be written, in one clear line with the remedy. Nothing of a refused batch of
// events counts as written; the same batch may be offered again.
import { cleanText } from '../core/clean-text.js';

export type JournalReason =
  | 'exists'
  | 'no-folder'
  | 'not-a-file'
  | 'not-permitted'
  | 'in-use'
  | 'full'
  | 'removed'
  | 'replaced'
  | 'changed'
  | 'closed'
  | 'disk';

export class JournalError extends Error {
  override readonly name = 'JournalError';
  constructor(
    readonly reason: JournalReason,
    readonly path: string,
    what: string,
    fix: string,
    cause?: unknown,
  ) {
    super(
      `session file ${cleanText(path, 300)}: ${what}; ${fix}`,
      cause === undefined ? {} : { cause },
    );
  }

  /** False where trying again cannot help. */
  get canRetry(): boolean {
    return this.reason !== 'changed' && this.reason !== 'closed';
  }
}

interface Words {
  readonly reason: JournalReason;
  readonly what: string;
  readonly fix: string;
}

const full = 'free some space, then go on';

const wordsByCode: Readonly<Record<string, Words>> = {
  ENOSPC: { reason: 'full', what: 'the disk is full', fix: full },
  EDQUOT: { reason: 'full', what: 'your disk quota is used up', fix: full },
  EFBIG: {
    reason: 'full',
    what: 'the file may not grow any larger',
    fix: 'raise the limit on file size, then go on',
  },
  EACCES: {
    reason: 'not-permitted',
    what: 'permission is refused',
    fix: 'make it writable, or save elsewhere with --session',
  },
  EPERM: {
    reason: 'not-permitted',
    what: 'permission is refused',
    fix: 'make it writable, or save elsewhere with --session',
  },
  EROFS: {
    reason: 'not-permitted',
    what: 'the disk can only be read',
    fix: 'save on another disk, with --session',
  },
  ENOENT: {
    reason: 'no-folder',
    what: 'there is no such file or folder',
    fix: 'check the path, or make the folder first',
  },
  ENOTDIR: {
    reason: 'no-folder',
    what: 'part of the path is a file, not a folder',
    fix: 'check the path',
  },
  EISDIR: { reason: 'not-a-file', what: 'this is a folder', fix: 'give the name of a file' },
  EEXIST: {
    reason: 'exists',
    what: 'there is such a file already, and none is ever overwritten',
    fix: 'choose another name, or go on with it by --resume',
  },
  ENAMETOOLONG: { reason: 'no-folder', what: 'the name is too long', fix: 'choose a shorter one' },
  EMFILE: {
    reason: 'disk',
    what: 'too many files are open',
    fix: 'close other programs, then go on',
  },
};

/** What an error of the operating system means, in words. */
const reasonOf = (error: unknown): Words => {
  const { code, message } = error as NodeJS.ErrnoException;
  const words =
    code !== undefined && Object.hasOwn(wordsByCode, code) ? wordsByCode[code] : undefined;
  return (
    words ?? {
      reason: 'disk',
      what: `the disk reported an error (${code ?? message})`,
      fix: 'check the disk, then go on',
    }
  );
};

/** Whether an error came from the operating system, not from a slip in this program. */
export const isSystemError = (error: unknown): boolean =>
  error instanceof Error && typeof (error as NodeJS.ErrnoException).code === 'string';

export const journalErrorFrom = (path: string, error: unknown): JournalError => {
  if (error instanceof JournalError) return error;
  const { reason, what, fix } = reasonOf(error);
  return new JournalError(reason, path, what, fix, error);
};

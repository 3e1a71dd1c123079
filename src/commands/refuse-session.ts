// A session is never replaced, not even where the user says that a file may be.
import { english } from '../core/words/english.js';
import { FileError } from '../store/file-error.js';
import { type StoredKind, storedKind } from '../store/stored-kind.js';
import { exitCodes, UserError } from './user-error.js';

/** @param out as it may be shown. @throws UserError where there is a session in that place. */
export const refuseSession = (path: string, out: string): void => {
  if (kindAt(path) !== 'session') return;
  throw new UserError(english.refusals.neverReplaced(out), exitCodes.unwritten);
};

const kindAt = (path: string): StoredKind | undefined => {
  try {
    return storedKind(path);
  } catch (error) {
    // Nothing is there, or nothing that can be read: whoever writes says so.
    if (error instanceof FileError) return undefined;
    throw error;
  }
};

// Opens a file for reading. Refuses, in words, what is not there, may not be read, or is no regular file (a pipe
// or device would never end).
import { closeSync, constants, fstatSync, openSync } from 'node:fs';
import { FileError } from './file-error.js';

/** @returns the descriptor. @throws FileError */
export const openToRead = (path: string): number => {
  let fd: number;
  try {
    // Without O_NONBLOCK the opening of a pipe waits for its other end. Windows has neither.
    fd = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  } catch (error) {
    throw new FileError(path, [{ path: [], ...wordsFor(error) }]);
  }
  const state = fstatSync(fd);
  if (state.isFile()) return fd;
  closeSync(fd);
  const what = state.isDirectory() ? 'this is a folder' : 'this is not a regular file';
  throw new FileError(path, [{ path: [], what, fix: 'give a file' }]);
};

const notReadable = { what: 'it may not be read', fix: 'change its permissions' };

const wordsByCode: Readonly<Record<string, { what: string; fix: string }>> = {
  ENOENT: { what: 'there is no such file', fix: 'check the path' },
  ENOTDIR: { what: 'part of the path is a file, not a folder', fix: 'check the path' },
  EISDIR: { what: 'this is a folder', fix: 'give a file' },
  EACCES: notReadable,
  EPERM: notReadable,
};

const wordsFor = (error: unknown): { what: string; fix: string } => {
  const { code, message } = error as NodeJS.ErrnoException;
  const words =
    code !== undefined && Object.hasOwn(wordsByCode, code) ? wordsByCode[code] : undefined;
  return words ?? { what: `it could not be read (${code ?? message})`, fix: 'check the disk' };
};

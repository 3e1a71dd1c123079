// Writes what a command was asked for so that there is either the whole file or none: into a new file beside it first, then to its
// place in one step. Never replaces a file unless told to, and never anything that is not a plain file.
import {
  closeSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';

export class OutFileError extends Error {
  override readonly name = 'OutFileError';
}

/** @throws OutFileError in words, with the remedy. */
export const writeOut = (
  path: string,
  text: string,
  { force }: { readonly force: boolean },
): void => {
  refuseWhatIsThere(path, force);
  const beside = `${path}.${process.pid}.new`;
  try {
    writeNew(beside, text);
    if (force) renameSync(beside, path);
    else putInPlace(beside, path);
  } catch (error) {
    throw inWords(path, error);
  } finally {
    rmSync(beside, { force: true });
  }
};

const refuseWhatIsThere = (path: string, force: boolean): void => {
  const there = lstatSync(path, { throwIfNoEntry: false });
  if (there === undefined) return;
  if (there.isDirectory()) throw new OutFileError(`${path} is a folder; give the name of a file`);
  if (!there.isFile() && !there.isSymbolicLink()) {
    throw new OutFileError(`${path} is no plain file; --out - writes to standard output`);
  }
  if (!force) throw occupied(path);
};

const writeNew = (path: string, text: string): void => {
  const fd = openSync(path, 'wx');
  try {
    writeFileSync(fd, text);
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
};

/** File systems without a second name for a file say so with one of these. */
const noLinks: ReadonlySet<string | undefined> = new Set([
  'EPERM',
  'ENOTSUP',
  'EOPNOTSUPP',
  'ENOSYS',
  'EMLINK',
]);

/** A second name fails where one is there already, in the same step; without such names, an empty file holds it. */
const putInPlace = (beside: string, path: string): void => {
  try {
    linkSync(beside, path);
  } catch (error) {
    if (!noLinks.has((error as NodeJS.ErrnoException).code)) throw error;
    closeSync(openSync(path, 'wx'));
    renameSync(beside, path);
  }
};

const occupied = (path: string): OutFileError =>
  new OutFileError(`${path} is there already; give another name, or --force to replace it`);

const inWords = (path: string, error: unknown): OutFileError => {
  if (error instanceof OutFileError) return error;
  const { code, message } = error as NodeJS.ErrnoException;
  switch (code) {
    case 'EEXIST':
      return occupied(path);
    case 'ENOENT':
      return new OutFileError(`${path}: the folder is not there; make it first`);
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return new OutFileError(`${path}: may not be written here; choose another folder with --out`);
    case 'ENOSPC':
    case 'EDQUOT':
      return new OutFileError(`${path}: the disk is full; make room and try again`);
    default:
      return new OutFileError(`${path} could not be written: ${message}`);
  }
};

// The learned reply pads, in the platform's configuration folder or wherever they are asked for. Written whole or not
// at all.
import { existsSync, mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { readDefinition } from '../core/definition/read-definition.js';
import { type PadFile, padsKind } from '../core/pads/pad-file.js';
import { FileError } from './file-error.js';
import { platformFolders } from './platform-folders.js';
import { readTextFile } from './read-text-file.js';

export const padFilePath = (): string => join(platformFolders().config, 'pads.json');

/** @throws FileError with every problem, each with its line. */
export const readPads = (path: string): PadFile => {
  const { content, problems } = readDefinition(padsKind, readTextFile(path).text);
  if (content === undefined) throw new FileError(path, problems);
  return content;
};

/** The pads at a path, or null where there is no such file. @throws FileError */
export const padsAt = (path: string): PadFile | null => (existsSync(path) ? readPads(path) : null);

/** @throws FileError where the file cannot be written. */
export const writePads = (pads: PadFile, path: string): void => {
  const beside = `${path}.new`;
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(beside, `${JSON.stringify(pads, null, 2)}\n`);
    renameSync(beside, path);
  } catch (error) {
    const what = `it cannot be written: ${error instanceof Error ? error.message : String(error)}`;
    throw new FileError(path, [{ path: [], what, fix: 'give another file with --pads' }]);
  }
};

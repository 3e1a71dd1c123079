// The keys and pedals a person has chosen, in the platform's configuration folder. Written whole or not at all.
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { JsonError, readJson } from '../core/definition/json-source.js';
import { FileError } from './file-error.js';
import { platformFolders } from './platform-folders.js';
import { readTextFile } from './read-text-file.js';

const keyFile = z.strictObject({
  format: z.literal('pinwalk-keys/1'),
  keys: z.record(z.string().max(20), z.array(z.string().min(1).max(40)).max(8)),
});

export type ChosenKeys = z.infer<typeof keyFile>['keys'];

export const keyFilePath = (): string => join(platformFolders().config, 'keys.json');

/** The chosen keys by act, or nothing where none were chosen. @throws FileError */
export const readKeys = (path: string = keyFilePath()): ChosenKeys => {
  if (!existsSync(path)) return {};
  const fix = 'correct it, or begin anew with `pinwalk keys --reset`';
  try {
    const read = keyFile.safeParse(readJson(readTextFile(path).text).value);
    if (read.success) return read.data.keys;
  } catch (error) {
    if (!(error instanceof JsonError)) throw error;
    throw new FileError(path, [{ path: [], line: error.line, what: error.what, fix }]);
  }
  throw new FileError(path, [{ path: [], what: 'this is no file of keys', fix }]);
};

export const writeKeys = (keys: ChosenKeys, path: string = keyFilePath()): void => {
  mkdirSync(dirname(path), { recursive: true });
  const beside = `${path}.new`;
  writeFileSync(beside, `${JSON.stringify({ format: 'pinwalk-keys/1', keys }, null, 2)}\n`);
  renameSync(beside, path);
};

export const forgetKeys = (path: string = keyFilePath()): void => rmSync(path, { force: true });

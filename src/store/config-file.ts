// The configuration file, in the platform's usual place or where the user says. Read whole or refused with every
// slip and its line. Paths in it are made absolute here: a relative one lies beside the file.
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, isAbsolute, join, resolve } from 'node:path';
import { type Config, configFormat, configKind, pathKeys } from '../core/config/config-format.js';
import { readDefinition } from '../core/definition/read-definition.js';
import type { Problem } from '../core/problems.js';
import { isPath } from './definition-path.js';
import { FileError } from './file-error.js';
import { platformFolders } from './platform-folders.js';
import { readTextFile } from './read-text-file.js';

export interface ReadConfig {
  readonly path: string;
  /** False where there is no such file in the usual place: everything is as usual. */
  readonly found: boolean;
  readonly config: Config;
}

export const configPath = (): string => join(platformFolders().config, 'config.json');

/** @throws FileError with every slip and its line, or when a file that was asked for is not there. */
export const readConfig = (asked?: string): ReadConfig => {
  const path = resolve(asked ?? configPath());
  if (asked === undefined && !existsSync(path)) return { path, found: false, config: {} };
  const { content, problems } = readDefinition(configKind, readTextFile(path).text);
  if (content === undefined) throw new FileError(path, problems);
  const { $schema: _schema, format: _format, ...config } = content;
  return { path, found: true, config: withWholePaths(config, dirname(path)) };
};

const withWholePaths = (config: Config, folder: string): Config => {
  const { driver, profile } = config;
  const definitions = Object.entries({ driver, profile }).filter(
    ([, named]) => named !== undefined && isPath(named),
  );
  const files = pathKeys.map((key) => [key, config[key]] as const);
  const whole = [...definitions, ...files].flatMap(([key, path]) =>
    path === undefined ? [] : [[key, wholePath(path, folder)]],
  );
  return { ...config, ...Object.fromEntries(whole) };
};

const wholePath = (path: string, folder: string): string => {
  if (/^~[/\\]/u.test(path)) return join(homedir(), path.slice(2));
  return isAbsolute(path) ? path : join(folder, path);
};

/**
 * Writes a configuration to begin with, and beside it the schema by which editors explain every key.
 * @throws FileError when there is one already, or the folder cannot be written.
 */
export const writeStarter = (path: string, starter: Config, schema: object): void => {
  const write = (to: string, content: object, flag: 'w' | 'wx'): void =>
    writeFileSync(to, `${JSON.stringify(content, null, 2)}\n`, { flag, mode: 0o600 });
  try {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    const format = configFormat.shape.format.value;
    write(path, { $schema: `./${schemaName}`, format, ...starter }, 'wx');
    write(join(dirname(path), schemaName), schema, 'w');
  } catch (error) {
    throw new FileError(path, [problemOf(error as NodeJS.ErrnoException)]);
  }
};

const schemaName = 'config.schema.json';

const problemOf = ({ code, message }: NodeJS.ErrnoException): Problem =>
  code === 'EEXIST'
    ? { path: [], what: 'there is a configuration already', fix: 'edit that one' }
    : { path: [], what: `it cannot be written (${code ?? message})`, fix: 'check the folder' };

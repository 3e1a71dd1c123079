// Finds drivers and profiles by id or by path and gives them checked, with the hash of their bytes. A person's own
// folder comes before what is shipped and what was fetched from the shop's library; an id that both of these have is
// refused. An id never leads out of its folder; a path is taken as it is given.
import { existsSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { cleanText } from '../core/clean-text.js';
import { type DefinitionKind, readDefinition } from '../core/definition/read-definition.js';
import { checkDriver } from '../core/meter/check-driver.js';
import { type Driver, driverFormat } from '../core/meter/driver-format.js';
import { nearestName } from '../core/nearest-name.js';
import { type Problem, quoted } from '../core/problems.js';
import type { Profile } from '../core/profile/profile-format.js';
import { profileKind } from '../core/profile/profile-kind.js';
import { dataFolder } from './data-folder.js';
import { isPath } from './definition-path.js';
import { FileError } from './file-error.js';
import { platformFolders } from './platform-folders.js';
import { readTextFile } from './read-text-file.js';
import { shippedFolder } from './shipped.js';

export interface Definition<T> {
  readonly id: string;
  readonly path: string;
  /** 64 hex digits over the file's bytes. */
  readonly sha256: string;
  readonly content: T;
  readonly warnings: readonly Problem[];
}

export const driverKind: DefinitionKind<Driver> = {
  word: 'driver',
  format: driverFormat.shape.format.value,
  schema: driverFormat,
  check: checkDriver,
};

/** What was fetched from the shop's library. */
export const libraryFolder = (): string => join(dataFolder(), 'library');

/** A person's own, which stands in for any other; what is shipped beside the program; the shop's library. */
export const definitionFolders = (name: 'drivers' | 'profiles'): readonly string[] => [
  join(platformFolders().config, name),
  shippedFolder(name),
  join(libraryFolder(), name),
];

/** @throws FileError with every problem, each with its line. */
export const loadDriver = (
  idOrPath: string,
  folders: readonly string[] = definitionFolders('drivers'),
): Definition<Driver> => loadOf(driverKind, idOrPath, folders);

/** @throws FileError with every problem, each with its line. */
export const loadProfile = (
  idOrPath: string,
  folders: readonly string[] = definitionFolders('profiles'),
): Definition<Profile> => loadOf(profileKind, idOrPath, folders);

/** For an id that a file gave and no person: it cannot lead to any other file. @throws FileError */
export const loadDriverById = (
  id: string,
  folders: readonly string[] = definitionFolders('drivers'),
): Definition<Driver> => loadById(driverKind, id, folders);

/** What can be listed, by the word for one of it. */
export interface Listed {
  driver: Driver;
  profile: Profile;
}

/**
 * Every definition that can be named by its id, each id once: a shop's own file stands in for a shipped one.
 * Files that are there but cannot be used are handed to `broken` and left out.
 */
export const listDefinitions = <K extends keyof Listed>(
  word: K,
  broken: (error: FileError) => void = () => undefined,
  folders: readonly string[] = definitionFolders(`${word}s`),
): readonly Definition<Listed[K]>[] => {
  const kinds: { readonly [W in keyof Listed]: DefinitionKind<Listed[W]> } = {
    driver: driverKind,
    profile: profileKind,
  };
  return listOf(kinds[word], folders, broken);
};

/** @throws FileError with every problem, each with its line. */
export const loadOf = <T extends { id: string }>(
  kind: DefinitionKind<T>,
  idOrPath: string,
  folders: readonly string[],
): Definition<T> => {
  return isPath(idOrPath) ? readFile(kind, idOrPath) : loadById(kind, idOrPath, folders);
};

const loadById = <T extends { id: string }>(
  kind: DefinitionKind<T>,
  id: string,
  folders: readonly string[],
): Definition<T> => {
  const [own, ...others] = isPath(id) ? [] : folders;
  const named = (folder: string): string => join(folder, `${id}.json`);
  if (own !== undefined && existsSync(named(own))) return readNamedFile(kind, named(own));
  const paths = others.map(named).filter((path) => existsSync(path));
  const [first, ...rest] = paths.map((path) => readNamedFile(kind, path));
  if (first !== undefined) {
    if (rest.every(({ sha256 }) => sha256 === first.sha256)) return first;
    throw ambiguous(kind, id, paths, own);
  }
  const known = [...new Set(folders.flatMap(idsIn))];
  const near = nearestName(id, known);
  const all =
    known.length === 0
      ? 'give the path of a file'
      : `known are ${known.map(quoted).join(', ')}; or give a file`;
  const fix = near === undefined ? all : `did you mean ${quoted(near)}?`;
  const what = `there is no ${kind.word} of this name`;
  throw new FileError(id, [{ path: [], what, fix }]);
};

const ambiguous = (
  { word }: { readonly word: string },
  id: string,
  paths: readonly string[],
  own: string | undefined,
): FileError => {
  const shown = paths.map((path) => cleanText(path, 200)).join(' and ');
  const copy = own === undefined ? '' : `, or copy it to ${cleanText(own, 200)}`;
  const what = `more than one ${word} has this name: ${shown}`;
  return new FileError(id, [{ path: [], what, fix: `give the path of the one you mean${copy}` }]);
};

/** Of one id in several folders the first is taken. */
export const listOf = <T extends { id: string }>(
  kind: DefinitionKind<T>,
  folders: readonly string[],
  broken: (error: FileError) => void,
): readonly Definition<T>[] => {
  const definitions = new Map<string, Definition<T>>();
  for (const folder of folders) {
    for (const id of idsIn(folder)) {
      if (definitions.has(id)) continue;
      try {
        definitions.set(id, readNamedFile(kind, join(folder, `${id}.json`)));
      } catch (error) {
        if (!(error instanceof FileError)) throw error;
        broken(error);
      }
    }
  }
  return [...definitions.values()];
};

/** Names of the definitions in a folder, in order. A folder that is not there holds none. */
export const definitionFiles = (folder: string): string[] => {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch {
    return [];
  }
  return names
    .filter(
      (name) => name.endsWith('.json') && !name.endsWith('.schema.json') && !name.startsWith('.'),
    )
    .sort();
};

const idsIn = (folder: string): string[] =>
  definitionFiles(folder).map((name) => basename(name, '.json'));

/** In a folder of definitions a file is named for its id, so that either leads to the other. */
const readNamedFile = <T extends { id: string }>(
  kind: DefinitionKind<T>,
  path: string,
): Definition<T> => {
  const definition = readFile(kind, path);
  if (`${definition.id}.json` === basename(path)) return definition;
  const what = `the id is ${quoted(definition.id)}, but the file is named ${quoted(basename(path))}`;
  throw new FileError(path, [{ path: ['id'], what, fix: 'make the two the same' }]);
};

const readFile = <T extends { id: string }>(
  kind: DefinitionKind<T>,
  path: string,
): Definition<T> => {
  const { text, sha256 } = readTextFile(path);
  const { content, problems } = readDefinition(kind, text);
  if (content === undefined) throw new FileError(path, problems);
  return { id: content.id, path, sha256, content, warnings: problems };
};

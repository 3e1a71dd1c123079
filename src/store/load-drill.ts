// Finds a drill by id or path, with the session it plays, whose bytes must be the ones the drill was made for.
import { hash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Drill } from '../core/drill/drill-format.js';
import { drillKind } from '../core/drill/read-drill.js';
import { FileError } from './file-error.js';
import { type Definition, libraryFolder, listOf, loadOf } from './load-definitions.js';
import { platformFolders } from './platform-folders.js';
import { shippedFolder } from './shipped.js';

export interface LoadedDrill extends Definition<Drill> {
  readonly sessionPath: string;
}

/** A person's own, what is shipped beside the program, the shop's library. */
const drillFolders = (): readonly string[] => [
  join(platformFolders().config, 'drills'),
  shippedFolder('recordings/drills'),
  join(libraryFolder(), 'drills'),
];

/** @throws FileError with every problem of the drill, or when its session is missing or another one. */
export const loadDrill = (idOrPath: string, folders = drillFolders()): LoadedDrill => {
  const found = loadOf(drillKind, idOrPath, folders);
  return { ...found, sessionPath: sessionOf(found) };
};

/** Every drill that can be named by its id, easy ones first. */
export const listDrills = (folders = drillFolders()): readonly Definition<Drill>[] =>
  [...listOf(drillKind, folders, () => undefined)].sort(
    (a, b) => a.content.level - b.content.level || a.id.localeCompare(b.id),
  );

const sessionOf = ({ path, content: { session, sha256 } }: Definition<Drill>): string => {
  const folder = dirname(path);
  const sessionPath = [join(folder, session), join(folder, '..', 'sessions', session)].find(
    existsSync,
  );
  const refuse = (what: string, fix: string): FileError =>
    new FileError(path, [{ path: ['session'], what, fix }]);
  if (sessionPath === undefined) {
    throw refuse(`there is no session "${session}" beside the drill`, 'put the file there');
  }
  if (hash('sha256', readFileSync(sessionPath), 'hex') !== sha256) {
    throw refuse(
      `"${session}" is not the session this drill was made for`,
      'fetch both anew, or put the hash of this one into the drill',
    );
  }
  return sessionPath;
};

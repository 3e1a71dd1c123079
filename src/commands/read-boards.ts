// The good boards that `learn` is given: saved sessions and tables of notes, each one board with a name of its own.
import { basename, resolve } from 'node:path';
import { cleanText } from '../core/clean-text.js';
import { type Board, gatherBoard } from '../core/learn/board.js';
import { importNotes } from '../core/learn/import-notes.js';
import type { Wanted } from '../core/learn/refuse-boards.js';
import type { Profile } from '../core/profile/profile-format.js';
import { english } from '../core/words/english.js';
import { FileError } from '../store/file-error.js';
import { readSession } from '../store/journal-reader.js';
import { readTextFile } from '../store/read-text-file.js';
import { storedKind } from '../store/stored-kind.js';
import { refuseEmpty } from './named-session.js';
import { exitCodes, UserError } from './user-error.js';

/** @throws UserError for what is no session, or given twice; FileError for what is damaged. */
export const readBoards = (
  sessions: readonly string[],
  notes: readonly string[],
  profile: Profile,
  wanted: Wanted,
): readonly Board[] => {
  const nameOf = namer();
  return [
    ...sessions.map((file) => boardOfSession(file, nameOf(file))),
    ...notes.map((file) => boardOfNotes(file, nameOf(file), profile, wanted)),
  ];
};

/** Names boards by their files, each differently. @throws UserError for a file that is given twice. */
const namer = (): ((file: string) => string) => {
  const paths = new Set<string>();
  const names = new Set<string>();
  return (file) => {
    const path = resolve(file);
    const base = cleanText(basename(file), 80);
    if (paths.has(path)) throw new UserError(english.refusals.givenTwice(base), exitCodes.usage);
    paths.add(path);
    let name = base;
    for (let nth = 2; names.has(name); nth += 1) name = `${base} (${nth})`;
    names.add(name);
    return name;
  };
};

const boardOfSession = (file: string, name: string): Board => {
  const kind = storedKind(file);
  if (kind !== 'session') {
    throw new UserError(
      english.refusals.otherThanSession(cleanText(file, 300), kind ?? null),
      exitCodes.badFile,
    );
  }
  const board = gatherBoard(name, readSession(file));
  if (board !== null) return board;
  return refuseEmpty(cleanText(file, 300));
};

const boardOfNotes = (file: string, name: string, profile: Profile, wanted: Wanted): Board => {
  const imported = importNotes(name, readTextFile(file).text, profile, wanted);
  if (!imported.ok) throw new FileError(file, imported.problems);
  return imported.board;
};

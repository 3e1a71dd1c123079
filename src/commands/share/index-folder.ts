// `share index`: makes the index of a folder that any static file server can then serve as a library.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { Command } from 'commander';
import { cleanText } from '../../core/clean-text.js';
import { readDefinition } from '../../core/definition/read-definition.js';
import { formatProblem } from '../../core/problems.js';
import {
  type LibraryEntry,
  type LibraryFile,
  type LibraryKind,
  libraryFolders,
  libraryFormat,
  libraryKind,
  libraryKinds,
} from '../../core/share/library-format.js';
import { english } from '../../core/words/english.js';
import { definitionFiles } from '../../store/load-definitions.js';
import { writeOut } from '../../store/write-out.js';
import { type SayOptions, sayer } from '../say.js';
import { exitCodes, UserError } from '../user-error.js';
import { checkEntry } from './check-entry.js';

interface IndexOptions extends SayOptions {
  readonly title?: string;
}

const examples = `
Examples:
  pinwalk share index ./library
      reads library/profiles, library/drivers and library/drills, writes library/index.json
Then let any web server serve the folder; its address is what the others give as "library".`;

const words = english.share;

export const indexCommand = (): Command =>
  new Command('index')
    .description("make the index of a folder that is to be a shop's library")
    .argument('<folder>', 'holds profiles, drivers and drills')
    .option('--title <text>', "what the library is called (default: the folder's name)")
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(run);

const run = (folder: string, options: IndexOptions): void => {
  const entries = libraryKinds.flatMap((kind) =>
    entriesOf(kind, join(folder, libraryFolders[kind])),
  );
  if (entries.length === 0) {
    throw new UserError(words.nothingToIndex(cleanText(folder, 300)), exitCodes.badFile);
  }
  const title = options.title ?? (basename(folder) || 'library');
  const text = `${JSON.stringify({ format: libraryFormat.shape.format.value, title, entries }, null, 1)}\n`;
  const file = join(folder, 'index.json');
  const { content, problems } = readDefinition(libraryKind, text);
  const refused = problems.map((problem) => formatProblem(cleanText(file, 300), problem));
  if (content === undefined) throw new UserError(refused, exitCodes.badFile);
  writeOut(file, text, { force: true });
  sayer(options)(words.indexed(cleanText(file, 300), entries.length), {
    type: 'library-indexed',
    file,
    entries: entries.length,
  });
};

const entriesOf = (kind: LibraryKind, folder: string): LibraryEntry[] =>
  definitionFiles(folder).map((name) => entryOf(kind, folder, name));

/** @throws UserError for a file that whoever fetched it would refuse. */
const entryOf = (kind: LibraryKind, folder: string, name: string): LibraryEntry => {
  const path = join(folder, name);
  const id = basename(name, '.json');
  const own = checkEntry({ kind, id }, [path]);
  refuse(own);
  const { title, provenance, session } = JSON.parse(readFileSync(path, 'utf8')) as {
    readonly title: string;
    readonly provenance: { readonly date: string };
    readonly session?: string;
  };
  const names = session === undefined ? [name] : [name, session];
  refuse(
    checkEntry(
      { kind, id },
      names.slice(1).map((other) => join(folder, other)),
    ),
  );
  const files = names.map((file): LibraryFile => {
    const bytes = readFileSync(join(folder, file));
    return {
      name: file,
      sha256: createHash('sha256').update(bytes).digest('hex'),
      bytes: bytes.length,
    };
  });
  return { kind, id, version: provenance.date, title: cleanText(title, 200), files };
};

const refuse = (lines: readonly string[]): void => {
  if (lines.length > 0) throw new UserError(lines, exitCodes.badFile);
};

// Brings a shop's library into a folder of its own: what is new, each file only if its hash is the listed one and
// its content is sound. What was there before stays until then, so that everything works without the network.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { readDefinition } from '../core/definition/read-definition.js';
import type { Problem } from '../core/problems.js';
import {
  type Library,
  type LibraryEntry,
  type LibraryFile,
  libraryFolders,
  libraryKind,
} from '../core/share/library-format.js';
import type { ShareFault } from '../core/share-fault.js';
import { type Answer, askServer, shownUrl } from './ask-server.js';
import { readCachedIndex, writeCachedIndex } from './library-cache.js';
import { ShareError } from './share-error.js';
import { writeWhole } from './write-whole.js';

export interface LibraryWish {
  /** Of the index, or of the folder in which it is `index.json`. */
  readonly address: URL;
  readonly folder: string;
  readonly token: string | null;
  /** What is wrong with an entry whose files were brought, in lines; none where it is sound. */
  readonly check: (entry: LibraryEntry, paths: readonly string[]) => readonly string[];
  readonly patienceS?: number;
}

export type Brought = { readonly entry: LibraryEntry } & (
  | { readonly outcome: 'fetched' | 'current' | 'withdrawn' }
  | { readonly outcome: 'refused'; readonly lines: readonly string[] }
  | { readonly outcome: 'failed'; readonly found: ShareFault }
);

/** An index that cannot be used; nothing was changed. */
export class IndexError extends Error {
  override readonly name = 'IndexError';
  constructor(
    readonly at: string,
    readonly problems: readonly Problem[],
  ) {
    super(`${problems.length} problems in the library index`);
  }
}

const mostIndexBytes = 8 * 1024 * 1024;
const usualPatienceS = 30;

/** Yields each entry as it is done. @throws ShareError, IndexError: then everything stays as it was. */
export async function* fetchLibrary(wish: LibraryWish): AsyncGenerator<Brought, void> {
  const indexUrl = wish.address.pathname.endsWith('.json')
    ? wish.address
    : new URL('index.json', withSlash(wish.address));
  const before = readCachedIndex(wish.folder);
  const index = await fetchIndex(wish, indexUrl, before);
  for (const entry of index.entries) yield await bring(wish, indexUrl, entry);
  for (const entry of before?.index.entries ?? []) {
    if (removeWithdrawn(wish.folder, entry, index)) yield { entry, outcome: 'withdrawn' };
  }
}

const withSlash = (address: URL): URL => {
  const folder = new URL(address);
  if (!folder.pathname.endsWith('/')) folder.pathname += '/';
  return folder;
};

const fetchIndex = async (
  { folder, token, patienceS = usualPatienceS }: LibraryWish,
  url: URL,
  before: ReturnType<typeof readCachedIndex>,
): Promise<Library> => {
  const known = before?.address === url.href && before.etag !== null ? before : null;
  const { status, headers, bytes } = await askServer({
    ...{ url, method: 'GET', token, mostBytes: mostIndexBytes, patienceS },
    headers: {
      accept: 'application/json',
      ...(known === null ? {} : { 'if-none-match': known.etag ?? '' }),
    },
  });
  if (status === 304 && known !== null) return known.index;
  const { content, problems } = readDefinition(libraryKind, bytes.toString('utf8'));
  if (content === undefined) throw new IndexError(shownUrl(url), problems);
  writeCachedIndex(folder, url.href, headers.get('etag'), content);
  return content;
};

const bring = async (wish: LibraryWish, indexUrl: URL, entry: LibraryEntry): Promise<Brought> => {
  const { folder } = wish;
  const home = join(folder, libraryFolders[entry.kind]);
  const places = entry.files.map((file) => ({ file, path: placeFor(home, file) }));
  if (places.every(({ file, path }) => isThere(path, file))) return { entry, outcome: 'current' };
  const staging = join(folder, '.incoming');
  rmSync(staging, { recursive: true, force: true });
  try {
    const brought: string[] = [];
    for (const file of entry.files) {
      const url = new URL(
        `${libraryFolders[entry.kind]}/${encodeURIComponent(file.name)}`,
        indexUrl,
      );
      const path = placeFor(staging, file);
      writeWhole(path, await fetchFile(wish, url, file));
      brought.push(path);
    }
    const lines = wish.check(entry, brought);
    if (lines.length > 0) return { entry, outcome: 'refused', lines };
    mkdirSync(home, { recursive: true, mode: 0o700 });
    // The definition last: it is what others look for.
    for (const { file, path } of places.toReversed()) renameSync(placeFor(staging, file), path);
    return { entry, outcome: 'fetched' };
  } catch (error) {
    if (!(error instanceof ShareError)) throw error;
    return { entry, outcome: 'failed', found: error.found };
  } finally {
    rmSync(staging, { recursive: true, force: true });
  }
};

/** The schema lets nothing but names pass; a path that got here all the same would be a mistake of ours. */
const placeFor = (folder: string, { name }: LibraryFile): string => {
  if (basename(name) !== name || name.startsWith('.')) throw new Error('a library file is a name');
  return join(folder, name);
};

const isThere = (path: string, { sha256 }: LibraryFile): boolean =>
  existsSync(path) && sha256Of(readFileSync(path)) === sha256;

const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const fetchFile = async (
  { token, patienceS = usualPatienceS }: LibraryWish,
  url: URL,
  { sha256, bytes: mostBytes }: LibraryFile,
): Promise<Answer['bytes']> => {
  const { bytes } = await askServer({ url, method: 'GET', token, mostBytes, patienceS });
  if (sha256Of(bytes) !== sha256) throw new ShareError({ fault: 'wrong-hash', at: shownUrl(url) });
  return bytes;
};

/** Files that only an entry no longer listed brought. */
const removeWithdrawn = (
  folder: string,
  { kind, id, files }: LibraryEntry,
  now: Library,
): boolean => {
  const same = now.entries.filter((entry) => entry.kind === kind);
  const listed = new Set(same.flatMap((entry) => entry.files.map(({ name }) => name)));
  for (const file of files) {
    if (listed.has(file.name)) continue;
    rmSync(placeFor(join(folder, libraryFolders[kind]), file), { force: true });
  }
  return !same.some((entry) => entry.id === id);
};

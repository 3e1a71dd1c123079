// The index of a shop's library: what there is, in which version, and the hash of every file. A file lies beside
// the index in the folder of its kind; its name is a name and never a path.
import { z } from 'zod';
import type { DefinitionKind } from '../definition/read-definition.js';
import { type Problem, quoted } from '../problems.js';

export const libraryKinds = ['profile', 'driver', 'drill'] as const;
export type LibraryKind = (typeof libraryKinds)[number];

export const libraryFolders: Readonly<Record<LibraryKind, string>> = {
  profile: 'profiles',
  driver: 'drivers',
  drill: 'drills',
};

/** Bytes of one file at most: a profile or driver somebody wrote, a session somebody walked. */
export const mostBytes = { '.json': 2 * 1024 * 1024, '.jsonl': 64 * 1024 * 1024 } as const;

const file = z.strictObject({
  name: z
    .string()
    .max(80)
    .regex(/^\w[\w+#.-]*\.jsonl?$/u, 'a file name such as j1.json, without a folder'),
  sha256: z.string().regex(/^[0-9a-f]{64}$/u, '64 hex digits'),
  bytes: z.int().positive(),
});

const entry = z.strictObject({
  kind: z.enum(libraryKinds),
  id: z
    .string()
    .max(40)
    .regex(/^\w[\w+#.-]*$/u, 'use letters, digits and . + # - _ only'),
  /** For people; whether a file is new is told by its hash. */
  version: z.string().min(1).max(40),
  title: z.string().min(1).max(200),
  /** The definition itself first; a drill's session after it. */
  files: z.array(file).min(1).max(2),
});
export type LibraryEntry = z.infer<typeof entry>;
export type LibraryFile = LibraryEntry['files'][number];

export const libraryFormat = z.strictObject({
  format: z.literal('pinwalk-library/1'),
  title: z.string().min(1).max(200),
  entries: z.array(entry).max(10_000),
});
export type Library = z.infer<typeof libraryFormat>;

export const libraryKind: DefinitionKind<Library> = {
  word: 'library index',
  format: libraryFormat.shape.format.value,
  schema: libraryFormat,
  check: ({ entries }) => [
    ...entries.flatMap((found, at) => wrongFiles(found, ['entries', at])),
    ...entries.flatMap((found, at) => twice(entries, found, at)),
  ],
};

const wrongFiles = ({ kind, id, files }: LibraryEntry, path: (string | number)[]): Problem[] => {
  const names = files.map(({ name }) => name);
  const isRight =
    names[0] === `${id}.json` &&
    (kind === 'drill' ? names[1]?.endsWith('.jsonl') === true : names.length === 1);
  const tooLarge = files.filter(({ name, bytes }) => bytes > mostBytesOf(name));
  const shape = kind === 'drill' ? `"${id}.json" and its session file` : `"${id}.json" alone`;
  return [
    ...(isRight
      ? []
      : [
          {
            path: [...path, 'files'],
            what: `these are not the files of a ${kind}`,
            fix: `give ${shape}`,
          },
        ]),
    ...tooLarge.map(({ name }) => ({
      path: [...path, 'files'],
      what: `${quoted(name)} is larger than any ${kind}`,
      fix: `${mostBytesOf(name)} bytes at most`,
    })),
  ];
};

const mostBytesOf = (name: string): number =>
  name.endsWith('.jsonl') ? mostBytes['.jsonl'] : mostBytes['.json'];

/** Letter case counts for nothing: on many disks two such files would be one. */
const twice = (
  entries: readonly LibraryEntry[],
  { kind, files }: LibraryEntry,
  at: number,
): Problem[] => {
  const names = files.map(({ name }) => name.toLowerCase());
  const before = entries
    .slice(0, at)
    .find(
      (other) =>
        other.kind === kind && other.files.some(({ name }) => names.includes(name.toLowerCase())),
    );
  if (before === undefined) return [];
  const what = `a file of this ${kind} is listed already, for ${quoted(before.id)}`;
  return [{ path: ['entries', at], what, fix: 'list each once' }];
};

// What is known of a shop's library between two fetches: its index and the server's mark for that state of it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { type Library, libraryFormat } from '../core/share/library-format.js';
import { writeWhole } from './write-whole.js';

const cached = z.strictObject({
  address: z.string(),
  etag: z.string().nullable(),
  index: libraryFormat,
});
export type CachedIndex = z.infer<typeof cached>;

const pathIn = (folder: string): string => join(folder, 'index.json');

/** Null where nothing was fetched yet, or what is there cannot be used: then everything is asked for anew. */
export const readCachedIndex = (folder: string): CachedIndex | null => {
  try {
    return cached.parse(JSON.parse(readFileSync(pathIn(folder), 'utf8')));
  } catch {
    return null;
  }
};

export const writeCachedIndex = (
  folder: string,
  address: string,
  etag: string | null,
  index: Library,
): void => writeWhole(pathIn(folder), `${JSON.stringify({ address, etag, index })}\n`);

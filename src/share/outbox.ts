// What waits to be delivered to a shop: for every item its bytes and a slip that says what they are. Named by the
// hash of the bytes, so that the same thing waits once. Lies in a folder that only its owner can read.
import { createHash } from 'node:crypto';
import { createReadStream, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { writeWhole } from './write-whole.js';

const slip = z.strictObject({
  format: z.literal('pinwalk-outbox/1'),
  sha256: z.string().regex(/^[0-9a-f]{64}$/u),
  bytes: z.int().nonnegative(),
  /** Where it goes below the shop's address. */
  path: z.string().regex(/^[0-9a-f]{64}\/[a-z0-9-]{1,40}\.[a-z]{2,8}$/u),
  mediaType: z.string().regex(/^[a-z]+\/[a-z0-9.+-]+$/u),
  customerData: z.boolean(),
  queued: z.iso.datetime(),
  attempts: z.int().nonnegative(),
  /** Why the last attempt failed, as a fault's name; null before the first. */
  last: z.string().nullable(),
});
export type Item = z.infer<typeof slip>;

export interface Outbox {
  /** Oldest first. A slip that cannot be read is passed over. */
  items(): readonly Item[];
  bytesPath(item: Pick<Item, 'sha256'>): string;
  /** Takes a finished item; its bytes lie at `bytesPath` already. */
  note(item: Item): void;
  /** Takes a finished item with its bytes. */
  keep(item: Item, bytes: Uint8Array): void;
  /** A place for bytes whose hash is not known yet. */
  draftPath(): string;
  remove(item: Pick<Item, 'sha256'>): void;
}

export const openOutbox = (folder: string): Outbox => {
  const slipPath = (sha256: string): string => join(folder, `${sha256}.json`);
  const bytesPath = ({ sha256 }: Pick<Item, 'sha256'>): string => join(folder, `${sha256}.bytes`);
  return {
    items: () =>
      namesIn(folder)
        .filter((name) => /^[0-9a-f]{64}\.json$/u.test(name))
        .flatMap((name) => readSlip(join(folder, name), name.slice(0, 64)))
        .sort((a, b) => a.queued.localeCompare(b.queued) || a.path.localeCompare(b.path)),
    bytesPath,
    note: (item) => writeWhole(slipPath(item.sha256), `${JSON.stringify(item)}\n`),
    keep: (item, bytes) => {
      writeWhole(bytesPath(item), bytes);
      writeWhole(slipPath(item.sha256), `${JSON.stringify(item)}\n`);
    },
    draftPath: () => {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      return join(folder, `.draft-${process.pid}`);
    },
    remove: (item) => {
      rmSync(slipPath(item.sha256), { force: true });
      rmSync(bytesPath(item), { force: true });
    },
  };
};

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
};

const readSlip = (path: string, sha256: string): Item[] => {
  try {
    const item = slip.parse(JSON.parse(readFileSync(path, 'utf8')));
    return item.sha256 === sha256 ? [item] : [];
  } catch {
    return [];
  }
};

/** Whether the bytes are still those that were put there. */
export const isWhole = async (path: string, { sha256, bytes }: Item): Promise<boolean> => {
  if (statSync(path, { throwIfNoEntry: false })?.size !== bytes) return false;
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path)) hash.update(chunk as Buffer);
  return hash.digest('hex') === sha256;
};

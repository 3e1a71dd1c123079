// Where a new session goes when nothing else is said, and what it is called: the time it began and the profile.
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { dataFolder } from './data-folder.js';
import { journalErrorFrom } from './journal-error.js';

export const sessionFolder = (): string => join(dataFolder(), 'sessions');

/** Where saved sessions lie, unless another folder is given; null before the first one is saved. */
export const savedSessions = (): string | null => {
  const folder = sessionFolder();
  return existsSync(folder) ? folder : null;
};

/** What waits to be delivered to the shop. */
export const outboxFolder = (): string => join(dataFolder(), 'outbox');

/** `2026-01-31-091530Z-demo.jsonl`: UTC, so that names sort by time wherever the shop is. */
export const sessionFileName = (profileId: string, beganAt: Date, nth = 1): string => {
  const [date = '', time = ''] = beganAt.toISOString().split('T');
  const clock = time.slice(0, 8).replaceAll(':', '');
  const profile = profileId.replaceAll(/[^\w+#-]/gu, '_').slice(0, 40);
  return `${date}-${clock}Z-${profile}${nth === 1 ? '' : `-${nth}`}.jsonl`;
};

/**
 * A path where no file is yet, in a folder that is made if need be. Customers' devices are nobody else's
 * business: a folder that is made can be read by its owner only.
 * @throws JournalError when the folder cannot be made.
 */
export const newSessionPath = (
  profileId: string,
  beganAt: Date = new Date(),
  folder: string = sessionFolder(),
): string => {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (error) {
    throw journalErrorFrom(folder, error);
  }
  for (let nth = 1; ; nth += 1) {
    const path = join(folder, sessionFileName(profileId, beganAt, nth));
    if (!existsSync(path)) return path;
  }
};

// A killed program leaves its sounds behind: the next one takes them away.
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';

const prefix = 'pinwalk-cues-';
const ownersFolder = new RegExp(`^${prefix}(\\d+)-`);

/** The beginning of the name of a folder that belongs to a process. */
export const soundFolderPrefix = (pid: number): string => `${prefix}${pid}-`;

/** Removes the sound folders of processes that have ended. What cannot be removed stays. */
export const sweepSounds = (parent: string): void => {
  for (const name of readdirSync(parent)) {
    const pid = ownersFolder.exec(name)?.[1];
    if (pid === undefined || !hasEnded(Number(pid))) continue;
    try {
      rmSync(join(parent, name), { recursive: true, force: true });
    } catch {
      // Somebody else's.
    }
  }
};

const hasEnded = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return false;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ESRCH';
  }
};

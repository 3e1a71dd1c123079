// Where sessions and everything else this program keeps lie: the platform's place, unless the configuration names
// another one.
import { platformFolders } from './platform-folders.js';

let chosen: string | undefined;

/** Called once, before any command acts. */
export const chooseDataFolder = (folder: string | undefined): void => {
  chosen = folder;
};

export const dataFolder = (): string => chosen ?? platformFolders().data;

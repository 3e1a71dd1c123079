// Where the data lies that comes with the program: beside its package.json, whether the program runs as built or from
// its sources.
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const rootAbove = (folder: string): string =>
  existsSync(join(folder, 'package.json')) || folder === dirname(folder)
    ? folder
    : rootAbove(dirname(folder));

export const shippedFolder = (name: 'drivers' | 'profiles' | 'recordings/drills'): string =>
  join(rootAbove(dirname(fileURLToPath(import.meta.url))), name);

// A file written whole or not at all, readable by its owner only.
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

export const writeWhole = (path: string, content: string | Uint8Array): void => {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const beside = `${path}.new`;
  writeFileSync(beside, content, { mode: 0o600, flush: true });
  renameSync(beside, path);
};

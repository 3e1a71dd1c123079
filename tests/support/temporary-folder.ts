// A folder of its own for each test that asks, gone afterwards.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

export const temporaryFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'pinwalk-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
};

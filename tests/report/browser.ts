// A real browser for tests: the machine's own chromium without a window, in a folder of its own, cut off from
// everything it would fetch by itself. Needs chromium and fails without it; a test that needs it is never skipped.
import { accessSync, constants, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium } from 'playwright-core';

const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export interface Browser {
  readonly context: BrowserContext;
  close(): Promise<void>;
}

export const openBrowser = async (): Promise<Browser> => {
  const executablePath = places.find(isThere);
  if (executablePath === undefined) {
    throw new Error(`chromium is needed for this test: apt-get install chromium`);
  }
  const folder = mkdtempSync(join(tmpdir(), 'pinwalk-browser-'));
  const context = await chromium.launchPersistentContext(folder, {
    executablePath,
    args: flags,
    viewport: { width: 1000, height: 1200 },
  });
  return {
    context,
    close: async () => {
      await context.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

const isThere = (path: string): boolean => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

// Which path to open for a serial link, each time it is dialled: the one asked for at first, and later the one
// the same adapter has now. Refuses to open another adapter that took over the old name.
import { stat } from 'node:fs/promises';
import { listPorts, type PortListing } from './list-ports.js';
import { findDevice, type RememberedDevice, rememberDevice } from './returning-device.js';

export interface SerialFinder {
  /** @throws Error in words where something else sits there now, or the system's own error where nothing does. */
  whereNow(): Promise<string>;
  /** The port at `path` was opened: keep in mind what it looks like. */
  opened(path: string): void;
}

export interface FinderSources {
  list(): Promise<PortListing>;
  /** @throws the system's error where there is nothing at the path, or no character device. */
  lookAt(path: string): Promise<void>;
}

const system: FinderSources = {
  list: () => listPorts(),
  lookAt: async (path) => {
    if (process.platform === 'win32') return;
    const found = await stat(path);
    if (!found.isCharacterDevice()) throw new Error('not a character device');
  },
};

export const createSerialFinder = (
  asked: string,
  sources: FinderSources = system,
): SerialFinder => {
  let remembered: RememberedDevice | undefined;
  return {
    whereNow: async () => {
      if (remembered !== undefined) {
        const now = findDevice((await sources.list()).ports, remembered);
        if ('stranger' in now) throw new Error(`another device is at ${now.stranger} now`);
        const path = now.found ?? remembered.entry.path;
        await sources.lookAt(path);
        return path;
      }
      await sources.lookAt(asked);
      return asked;
    },
    opened: (path) => {
      void sources.list().then(({ ports }) => {
        remembered = rememberDevice(ports, path) ?? remembered;
      });
    },
  };
};

/** Always the one path, for a connection that is not made again. */
export const fixedFinder = (path: string): SerialFinder => ({
  whereNow: async () => {
    await system.lookAt(path);
    return path;
  },
  opened: () => undefined,
});

// Which serial ports there are, as far as the system tells. Asks serialport, and looks into /dev itself where
// the system's own tool is missing; never fails: what could not be found out is said in a note.
import { readdir, realpath } from 'node:fs/promises';
import { cleanText } from '../core/clean-text.js';

/** Texts are cleaned. `serialNumber`, `vendorId` and `productId` are those of the USB adapter. */
export interface PortEntry {
  readonly path: string;
  readonly manufacturer?: string;
  readonly serialNumber?: string;
  readonly vendorId?: string;
  readonly productId?: string;
  /** A name that stays the same whichever socket the adapter is put into. */
  readonly byId?: string;
}

export interface PortListing {
  readonly ports: readonly PortEntry[];
  readonly note?: string;
}

/** What serialport tells of a port; every field but the path may be missing. */
export interface SystemPort {
  readonly path: string;
  readonly manufacturer?: string | undefined;
  readonly serialNumber?: string | undefined;
  readonly vendorId?: string | undefined;
  readonly productId?: string | undefined;
}

export interface PortSources {
  list(): Promise<readonly SystemPort[]>;
  /** Names in a folder; none where it does not exist. */
  namesIn(folder: string): Promise<readonly string[]>;
  /** Where a symbolic link leads; undefined where it leads nowhere. */
  follow(link: string): Promise<string | undefined>;
}

const system: PortSources = {
  list: async () => (await import('serialport')).SerialPort.list(),
  namesIn: (folder) => readdir(folder).catch(() => []),
  follow: (link) => realpath(link).catch(() => undefined),
};

const byIdFolder = '/dev/serial/by-id';
const deviceName = /^(ttyUSB|ttyACM|rfcomm)\d+$/u;
const longestText = 80;

export const listPorts = async (sources: PortSources = system): Promise<PortListing> => {
  let note: string | undefined;
  const told = await sources.list().catch((error: unknown) => {
    note = `the system's own list is not to be had (${cleanText(reasonOf(error), longestText)}): names come from /dev, and any other port can be typed as serial:PATH`;
    return [] as readonly SystemPort[];
  });
  const entries = new Map<string, PortEntry>(told.map((port) => [port.path, entryOf(port)]));
  for (const name of await sources.namesIn('/dev')) {
    const path = `/dev/${name}`;
    if (deviceName.test(name) && !entries.has(path)) entries.set(path, { path });
  }
  for (const name of await sources.namesIn(byIdFolder)) {
    const byId = `${byIdFolder}/${name}`;
    const path = await sources.follow(byId);
    if (path !== undefined) entries.set(path, { ...(entries.get(path) ?? { path }), byId });
  }
  const ports = [...entries.values()].sort((a, b) =>
    a.path.localeCompare(b.path, 'en', { numeric: true }),
  );
  return { ports, ...(note === undefined ? {} : { note }) };
};

const reasonOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && error.code === 'ENOENT'
    ? 'udevadm is missing'
    : error instanceof Error
      ? error.message
      : String(error);

const entryOf = (port: SystemPort): PortEntry => {
  const entry: { -readonly [K in keyof PortEntry]: PortEntry[K] } = { path: port.path };
  for (const key of ['manufacturer', 'serialNumber', 'vendorId', 'productId'] as const) {
    const value = port[key];
    if (value) entry[key] = cleanText(value, longestText);
  }
  return entry;
};

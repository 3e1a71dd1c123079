import { describe, expect, it } from 'vitest';
import { listPorts, type PortEntry, type PortSources } from '../../src/link/list-ports.js';
import { findDevice, rememberDevice } from '../../src/link/returning-device.js';
import { createSerialFinder } from '../../src/link/serial-finder.js';

const meter = { vendorId: '1234', productId: 'abcd', serialNumber: 'M1' };
const supply = { vendorId: '1234', productId: 'abcd', serialNumber: 'S7' };

const remembered = (ports: readonly PortEntry[], path: string) => {
  const device = rememberDevice(ports, path);
  if (device === undefined) throw new Error('not in the list');
  return device;
};

describe('findDevice', () => {
  it('should find an adapter by its serial number under another name', () => {
    const before = remembered([{ path: '/dev/ttyUSB0', ...meter }], '/dev/ttyUSB0');
    const now = [{ path: '/dev/ttyUSB1', ...meter }];
    expect(findDevice(now, before)).toEqual({ found: '/dev/ttyUSB1' });
  });

  it('should refuse another adapter that took the old name', () => {
    const before = remembered([{ path: '/dev/ttyUSB0', ...meter }], '/dev/ttyUSB0');
    expect(findDevice([{ path: '/dev/ttyUSB0', ...supply }], before)).toEqual({
      stranger: '/dev/ttyUSB0',
    });
  });

  it('should prefer the adapter to the name when both are there', () => {
    const before = remembered([{ path: '/dev/ttyUSB0', ...meter }], '/dev/ttyUSB0');
    const now = [
      { path: '/dev/ttyUSB0', ...supply },
      { path: '/dev/ttyUSB1', ...meter },
    ];
    expect(findDevice(now, before)).toEqual({ found: '/dev/ttyUSB1' });
  });

  it('should know an adapter without serial number by its by-id name', () => {
    const before = remembered([{ path: '/dev/ttyUSB0', byId: 'B' }], '/dev/ttyUSB0');
    expect(findDevice([{ path: '/dev/ttyUSB3', byId: 'B' }], before)).toEqual({
      found: '/dev/ttyUSB3',
    });
  });

  it('should not take its twin, which was there before, for it', () => {
    const ports = [{ path: '/dev/ttyUSB0', byId: 'B' }, { path: '/dev/ttyUSB1' }];
    const before = remembered(ports, '/dev/ttyUSB0');
    expect(findDevice([{ path: '/dev/ttyUSB1', byId: 'B' }], before)).toEqual({ found: null });
  });

  it('should keep to the old path where nothing tells devices apart', () => {
    const before = remembered([{ path: '/dev/ttyS0' }], '/dev/ttyS0');
    expect(findDevice([{ path: '/dev/ttyS0' }, { path: '/dev/ttyS1' }], before)).toEqual({
      found: '/dev/ttyS0',
    });
    expect(findDevice([{ path: '/dev/ttyS1' }], before)).toEqual({ found: null });
  });
});

describe('createSerialFinder', () => {
  const scene = (asked: string) => {
    let ports: PortEntry[] = [];
    const finder = createSerialFinder(asked, {
      list: async () => ({ ports }),
      lookAt: async (path) => {
        if (!ports.some((port) => port.path === path)) throw new Error('ENOENT');
      },
    });
    const plug = (...now: PortEntry[]): void => {
      ports = now;
    };
    return { finder, plug };
  };

  it('should follow an adapter from name to name', async () => {
    const { finder, plug } = scene('/dev/ttyUSB0');
    plug({ path: '/dev/ttyUSB0', ...meter });
    expect(await finder.whereNow()).toBe('/dev/ttyUSB0');
    finder.opened('/dev/ttyUSB0');
    await Promise.resolve();
    plug();
    await expect(finder.whereNow()).rejects.toThrow('ENOENT');
    plug({ path: '/dev/ttyUSB4', ...meter });
    expect(await finder.whereNow()).toBe('/dev/ttyUSB4');
    finder.opened('/dev/ttyUSB4');
    await Promise.resolve();
    expect(await finder.whereNow()).toBe('/dev/ttyUSB4');
    plug({ path: '/dev/ttyUSB4', ...supply });
    await expect(finder.whereNow()).rejects.toThrow('another device is at /dev/ttyUSB4 now');
  });

  it('should ask for the given path alone before the first opening', async () => {
    const { finder, plug } = scene('/dev/ttyUSB0');
    plug({ path: '/dev/ttyUSB1', ...meter });
    await expect(finder.whereNow()).rejects.toThrow('ENOENT');
  });
});

describe('listPorts', () => {
  const sources = (changes: Partial<PortSources>): PortSources => ({
    list: async () => [],
    namesIn: async () => [],
    follow: async () => undefined,
    ...changes,
  });

  it('should join what the system tells with the by-id names', async () => {
    const listing = await listPorts(
      sources({
        list: async () => [
          { path: '/dev/ttyS0', manufacturer: undefined },
          { path: '/dev/ttyUSB0', manufacturer: 'Ac\u001bme', ...meter },
        ],
        namesIn: async (folder) =>
          folder === '/dev' ? ['ttyUSB0', 'ttyS0', 'null'] : ['usb-Acme'],
        follow: async () => '/dev/ttyUSB0',
      }),
    );
    expect(listing).toEqual({
      ports: [
        { path: '/dev/ttyS0' },
        {
          path: '/dev/ttyUSB0',
          manufacturer: 'Ac\u241bme',
          ...meter,
          byId: '/dev/serial/by-id/usb-Acme',
        },
      ],
    });
  });

  it('should look into /dev itself when the system tool is missing, and say so', async () => {
    const missing = Object.assign(new Error('spawn udevadm ENOENT'), { code: 'ENOENT' });
    const listing = await listPorts(
      sources({
        list: () => Promise.reject(missing),
        namesIn: async (folder) =>
          folder === '/dev' ? ['ttyUSB10', 'ttyUSB2', 'ttyACM0', 'tty0', 'ttyS0'] : [],
      }),
    );
    expect(listing.ports.map(({ path }) => path)).toEqual([
      '/dev/ttyACM0',
      '/dev/ttyUSB2',
      '/dev/ttyUSB10',
    ]);
    expect(listing.note).toContain('udevadm is missing');
    expect(listing.note).toContain('serial:PATH');
  });

  it('should not fail on this machine', async () => {
    await expect(listPorts()).resolves.toHaveProperty('ports');
  });
});

// An adapter that comes back under another device name, on real pseudo-terminals: device names and by-id names as a
// system makes them, in a folder of our own, with another adapter at the old name meanwhile.
import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { readdir, readlink, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { listPorts } from '../../src/link/list-ports.js';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import { createReconnectingLink } from '../../src/link/reconnect.js';
import { dialSerial } from '../../src/link/serial-dial.js';
import { createSerialFinder } from '../../src/link/serial-finder.js';
import { plugIn } from '../support/pty.js';
import { recordLink, until } from './record-link.js';
import { linkDriver } from './test-driver.js';

const folder = (name: string): string => {
  const path = mkdtempSync(join(tmpdir(), `pinwalk-${name}-`));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  return path;
};

it('should go on with the adapter wherever it comes back, and never with another at its old name', async () => {
  const [dev, byId] = [folder('dev'), folder('by-id')];
  const plugAdapterIn = async (adapter: string, name: string) => {
    const path = join(dev, name);
    rmSync(join(byId, adapter), { force: true });
    symlinkSync(path, join(byId, adapter));
    return plugIn(path);
  };
  let listed = 0;
  const list = async () => {
    const ports = await listPorts({
      list: async () => [],
      namesIn: (path) => (path.endsWith('by-id') ? readdir(byId) : Promise.resolve([])),
      // As far as the device's own name; where that leads is none of a lister's business.
      follow: async (link) => {
        const path = await readlink(join(byId, basename(link)));
        return stat(path).then(
          () => path,
          () => undefined,
        );
      },
    });
    listed += 1;
    return ports;
  };
  const lookAt = async (path: string): Promise<void> => void (await stat(path));
  const driver = linkDriver('stream');
  const device = join(dev, 'ttyUSB0');
  const first = await plugAdapterIn('usb-Meter-if00', 'ttyUSB0');
  const dial = dialSerial(driver.wire.serial, createSerialFinder(device, { list, lookAt }), device);
  const clock = createMonotonicClock();
  const link = createReconnectingLink({ title: device, dial, driver, clock, patience: 'once' });
  onTestFinished(() => link.close());
  const recorded = recordLink(link);
  await until('opened', () => recorded.told.length > 0);
  await until('what it looks like is known', () => listed > 0);
  first.write('x\n1.1\n');
  await until('the first line', () => recorded.lines.length > 0);

  await first.unplug();
  const other = await plugAdapterIn('usb-Other-if00', 'ttyUSB0');
  other.write('x\n9.9\n9.9\n');
  await until('the other noticed', () => recorded.told.length > 2);
  const again = await plugAdapterIn('usb-Meter-if00', 'ttyUSB1');
  await until('opened again', () => recorded.told.at(-1) === 'opened again');
  again.write('x\n5.6\n');
  await until('the next line', () => recorded.lines.length > 1);

  expect(recorded.lines).toEqual(['1.1', '5.6']);
  expect(recorded.told).toEqual([
    'opened',
    `lost: ${device} went away: unplugged or switched off`,
    `lost: ${device}: another device is at ${device} now`,
    'opened again',
  ]);
});

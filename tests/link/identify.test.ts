// What answers, asked of a pretended meter of every shipped driver.
import { createServer } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Driver } from '../../src/core/meter/driver-format.js';
import type { Dial } from '../../src/link/connection.js';
import { identify } from '../../src/link/identify.js';
import { linkText, settingsToTry } from '../../src/link/identify-settings.js';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import type { SerialWire } from '../../src/link/serial-dial.js';
import type { Clock } from '../../src/session/ports.js';
import { driverIds, shippedDriver, shippedDrivers } from '../support/driver-files.js';
import { freePortPath, plugIn } from '../support/pty.js';
import { eagerClock } from './eager-clock.js';
import { pretendMeter, type Wire } from './pretend-meter.js';

const drivers = shippedDrivers();
const clock = createMonotonicClock();
const serial = (path: string) => ({ kind: 'serial', path, settings: {} }) as const;

const sameWire = (a: SerialWire, b: SerialWire): boolean =>
  a.baud === b.baud && a.parity === b.parity && a.dataBits === b.dataBits;

/** A meter that is understood at its own setting only; at any other it says and hears nothing. */
const dialMeter =
  (driver: Driver, wire: SerialWire, clock: Clock): Dial =>
  (events) => {
    let heard: (text: string) => void = () => undefined;
    let open = true;
    const line: Wire = {
      write: (bytes) => {
        clock.after(0.01, () => open && events.bytes(bytes));
      },
      hear: (call) => {
        heard = call;
      },
    };
    if (sameWire(wire, driver.wire.serial)) pretendMeter(driver, line, clock);
    clock.after(0, events.opened);
    return {
      send: (bytes) => heard(Buffer.from(bytes).toString('latin1')),
      close: async () => {
        open = false;
      },
    };
  };

describe('identify', () => {
  it('should have drivers to tell apart', () => {
    expect(driverIds.length).toBeGreaterThanOrEqual(6);
  });

  it.each(driverIds)('should find the speed and propose %s for its own meter', async (id) => {
    const driver = shippedDriver(id);
    const clock = eagerClock();
    const found = await identify(serial('/dev/ttyUSB0'), drivers, {
      clock,
      dialSerialAs: (_, wire) => dialMeter(driver, wire, clock),
    });
    const proposed = found.proposals.find((proposal) => proposal.driver === id);
    expect(proposed?.link).toBe('serial:/dev/ttyUSB0');
    expect(proposed?.evidence).toMatch(/^it (talks by itself|answers)/u);
    const styles = found.proposals.map((proposal) => shippedDriver(proposal.driver).talk.style);
    expect(new Set(styles)).toEqual(new Set([driver.talk.style]));
  });

  it('should ask a real port', async () => {
    const driver = shippedDriver('scpi-read');
    const pty = await plugIn();
    pretendMeter(driver, pty, clock);
    const tried: string[] = [];
    const found = await identify(serial(pty.path), [driver], {
      clock,
      trying: (says) => tried.push(says),
    });
    expect(found.proposals[0]).toMatchObject({ driver: 'scpi-read' });
    expect(found.proposals[0]?.evidence).toBe(
      'it answers *IDN? with "PRETEND,METER,0,1.0"; set up as scpi-read it reads without an error',
    );
    expect(tried[0]).toContain(pty.path);
  });

  it('should ask a TCP address', async () => {
    const driver = shippedDriver('scpi-initiate-fetch');
    const server = createServer((socket) => {
      pretendMeter(
        driver,
        {
          write: (bytes) => socket.write(bytes),
          hear: (call) => socket.on('data', (data) => call(data.toString('latin1'))),
        },
        clock,
      );
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    onTestFinished(() => void server.close());
    const address = server.address();
    const port = typeof address === 'object' && address !== null ? address.port : 0;
    const found = await identify({ kind: 'tcp', host: '127.0.0.1', port }, [driver], { clock });
    expect(found.proposals.map(({ driver, link }) => [driver, link])).toContainEqual([
      'scpi-initiate-fetch',
      `tcp://127.0.0.1:${port}`,
    ]);
  });

  it('should say why a port cannot be asked, and not try every speed on it', async () => {
    const path = freePortPath();
    const tried: string[] = [];
    const { proposals, notes } = await identify(serial(path), drivers, {
      clock,
      trying: (says) => tried.push(says),
    });
    expect(proposals).toEqual([]);
    expect(notes).toEqual([`no such port: ${path}; run \`pinwalk ports\` to see what is there`]);
    expect(tried).toHaveLength(1);
  });

  it('should tell of something that talks but is not understood', async () => {
    const pty = await plugIn();
    const timer = setInterval(() => pty.write('GPS \u001b[2J\r\n'), 100);
    onTestFinished(() => clearInterval(timer));
    const name = { ...serial(pty.path), settings: { baud: 9600, parity: 'none' } } as const;
    const { proposals, notes } = await identify(name, [shippedDriver('stream-value-unit')], {
      clock,
    });
    expect(proposals).toEqual([]);
    expect(notes[0]).toMatch(/^something talks at .*, 9600 8N1, but no driver reads it: "GPS /u);
    expect(notes.join('')).not.toContain('\u001b');
  });
});

describe('settingsToTry', () => {
  it('should begin with what most drivers ask for and go on with the usual speeds', () => {
    const settings = settingsToTry(serial('P'), drivers);
    const shared = settings.map(({ drivers }) => drivers.length);
    expect(shared).toEqual([...shared].sort((a, b) => b - a));
    expect(shared[0]).toBeGreaterThan(1);
    expect(settings.flatMap(({ drivers }) => drivers)).toHaveLength(drivers.length);
    const plain = settings.filter(({ wire }) => wire.dataBits === 8 && wire.dtr === undefined);
    expect(plain.map(({ wire }) => wire.baud)).toEqual(
      expect.arrayContaining([9600, 115200, 19200, 38400, 57600, 4800, 2400, 1200]),
    );
  });

  it('should not vary what the link name fixes', () => {
    const name = { ...serial('P'), settings: { baud: 4800 } };
    expect(new Set(settingsToTry(name, drivers).map(({ wire }) => wire.baud))).toEqual(
      new Set([4800]),
    );
  });
});

describe('linkText', () => {
  it('should name only what the driver does not say itself', () => {
    const driver = shippedDriver('scpi-read');
    const wire = driver.wire.serial;
    expect(linkText('/dev/ttyUSB0', wire, driver)).toBe('serial:/dev/ttyUSB0');
    expect(
      linkText('/dev/ttyUSB0', { ...wire, baud: 1200, parity: 'odd', dtr: false }, driver),
    ).toBe('serial:/dev/ttyUSB0?baud=1200&parity=odd&dtr=off');
  });
});

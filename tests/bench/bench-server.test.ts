// The bench over TCP on loopback, in real time: each shipped driver's meter as a raw socket instrument.
import { connect, type Socket } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import { parseBenchName } from '../../src/bench/bench-name.js';
import { type BenchServer, startBenchServer } from '../../src/bench/bench-server.js';
import { benchSetup } from '../../src/bench/bench-setup.js';
import type { Input } from '../../src/core/inputs.js';
import type { Reading } from '../../src/core/reading.js';
import { createMonotonicClock } from '../../src/link/monotonic-clock.js';
import { openLink } from '../../src/link/open-link.js';
import { createMeterFeed } from '../../src/session/meter-feed.js';
import { driverIds, shippedDriver } from '../support/driver-files.js';
import { shippedProfile } from './support/profile-files.js';

const serve = async (id: string, walks: 'fresh' | 'continued' = 'fresh'): Promise<BenchServer> => {
  const setup = benchSetup({
    bench: parseBenchName('healthy?rate=20'),
    driver: shippedDriver(id),
    profile: shippedProfile('demo'),
    hears: false,
  });
  const server = await startBenchServer({ setup, clock: createMonotonicClock(), port: 0, walks });
  onTestFinished(() => server.close());
  return server;
};

/** As `listenTo`, as soon as the connection before is over on the server's side as well. */
const listenAgain = async (port: number, enough: (text: string) => boolean): Promise<string> => {
  for (;;) {
    const text = await listenTo(port, enough);
    if (text !== '') return text;
    await listenToNothing(20);
  }
};

/** Text received until `enough`, over a plain socket. */
const listenTo = async (port: number, enough: (text: string) => boolean): Promise<string> => {
  const socket = connect(port, '127.0.0.1');
  try {
    return await textFrom(socket, enough);
  } finally {
    socket.destroy();
  }
};

const textFrom = (socket: Socket, enough: (text: string) => boolean): Promise<string> =>
  new Promise((resolve, reject) => {
    let text = '';
    socket.on('data', (chunk) => {
      text += chunk.toString('latin1');
      if (enough(text)) resolve(text);
    });
    socket.on('error', reject);
    socket.on('close', () => resolve(text));
  });

const lines = (count: number) => (text: string) => text.split('\n').length > count;

describe('the bench over TCP', () => {
  it.each(driverIds)('should speak the protocol of %s to the program', async (id) => {
    const server = await serve(id);
    const driver = shippedDriver(id);
    const clock = createMonotonicClock();
    const link = openLink({ kind: 'tcp', host: '127.0.0.1', port: server.port }, driver, {
      clock,
      patience: 'forever',
    });
    const feed = createMeterFeed({ link, driver, wanted: { function: 'resistance' }, clock });
    onTestFinished(() => feed.stop());
    const readings = await new Promise<Reading[]>((resolve) => {
      const taken: Reading[] = [];
      feed.start((input: Input) => {
        if (input.kind !== 'reading') return;
        taken.push(input.reading);
        if (taken.length === 3) resolve(taken);
      });
    });
    // The probe is in the air for the first second.
    expect(readings[0]).toHaveProperty('overload', true);
    expect(readings.filter((reading) => 'fault' in reading)).toEqual([]);
  });

  it('should begin anew at each connection, or go on', async () => {
    const fresh = await serve('stream-fields-flags', 'fresh');
    const first = await listenTo(fresh.port, lines(30));
    expect((await listenAgain(fresh.port, lines(30))).slice(0, 500)).toBe(first.slice(0, 500));

    const continued = await serve('stream-fields-flags', 'continued');
    const start = await listenTo(continued.port, lines(30));
    expect(start.slice(0, 500)).toBe(first.slice(0, 500));
    // It stands on its first ground by then.
    expect(await listenAgain(continued.port, lines(1))).toMatch(/^RES,\+0\.\d\d,OHM/u);
  });

  it('should turn a second program away', async () => {
    const server = await serve('stream-fields-flags');
    const socket = connect(server.port, '127.0.0.1');
    onTestFinished(() => {
      socket.destroy();
    });
    await textFrom(socket, lines(1));
    expect(await listenTo(server.port, lines(1))).toBe('');
  });

  it('should cut the connection, refuse for a while, and be there again', async () => {
    const server = await serve('stream-fields-flags', 'continued');
    const cut = listenTo(server.port, () => false);
    await listenToNothing(200);
    server.drop(0.3);
    expect(await cut).not.toBe('');
    await expect(listenTo(server.port, lines(1))).rejects.toThrow('ECONNREFUSED');
    await listenToNothing(500);
    expect(await listenTo(server.port, lines(2))).toContain('RES,');
  });
});

const listenToNothing = (ms: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, ms));

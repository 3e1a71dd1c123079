import { describe, expect, it } from 'vitest';
import { parseBenchName } from '../../src/bench/bench-name.js';
import { benchSetup } from '../../src/bench/bench-setup.js';
import { steadyPace } from '../../src/bench/pace.js';
import {
  createVirtualMeter,
  type VirtualMeter,
  type VirtualMeterSetup,
} from '../../src/bench/virtual-meter.js';
import { compileDriver } from '../../src/core/meter/compile-driver.js';
import type { Reading } from '../../src/core/reading.js';
import { driverIds, shippedDriver } from '../support/driver-files.js';
import { shippedProfile } from './support/profile-files.js';

const profile = shippedProfile('demo');

const setupOf = (id: string, name = 'healthy', change: Partial<VirtualMeterSetup> = {}) => ({
  ...benchSetup({
    bench: parseBenchName(name),
    driver: shippedDriver(id),
    profile,
    hears: false,
  }),
  ...change,
});

/** What a program asks of each kind of meter for one reading after another. */
const askFor = (id: string): string => {
  const { talk, wire } = shippedDriver(id);
  if (talk.style === 'stream') return '';
  if (talk.style === 'key') return talk.key;
  const commands = talk.functions.resistance?.read ?? [];
  return commands.map((command) => command + wire.sendEnd).join('');
};

const setUp = (id: string): string => {
  const { talk, wire } = shippedDriver(id);
  if (talk.style !== 'scpi') return '';
  const commands = [...talk.init, ...(talk.functions.resistance?.select ?? [])];
  return commands.map((command) => command + wire.sendEnd).join('');
};

/** Lets `seconds` pass in steps of 0.05 s, asking anew whenever something was said. */
const linesOf = (
  meter: VirtualMeter,
  id: string,
  seconds: number,
): { line: string; pin: string | null; atS: number }[] => {
  const lines: { line: string; pin: string | null; atS: number }[] = [];
  meter.receive(setUp(id) + askFor(id));
  for (let s = 0.05; s <= seconds; s += 0.05) {
    const said = meter.advanceTo(s);
    for (const line of said) lines.push({ line, pin: meter.touchedPin(), atS: s });
    if (said.length > 0) meter.receive(askFor(id));
  }
  return lines;
};

const decode = (id: string, line: string): Reading =>
  compileDriver(shippedDriver(id)).decode(0, line, { function: 'resistance' });

describe('a virtual meter', () => {
  it.each(driverIds)('should speak so that %s understands every line', (id) => {
    const lines = linesOf(createVirtualMeter(setupOf(id)), id, 25);
    const readings = lines.map(({ line }) => decode(id, line));
    expect(readings.filter((reading) => 'fault' in reading)).toEqual([]);
    expect(readings.length).toBeGreaterThan(30);
    expect(readings.some((reading) => 'overload' in reading)).toBe(true);
    // The first pins of the demo profile: ground, and the first pair near 390 ohm.
    const first = lines.flatMap(({ line, pin }) => (pin === '2' ? [decode(id, line)] : []));
    const last = first.flatMap((reading) => ('value' in reading ? [reading.value] : [])).at(-2);
    expect(Math.abs((last ?? 0) / 388 - 1)).toBeLessThan(0.1);
  });

  it.each(driverIds)('should say the same again with the same seed: %s', (id) => {
    const run = (seed: number) =>
      linesOf(createVirtualMeter(setupOf(id, `demo?seed=${seed}`)), id, 12).map(({ line }) => line);
    expect(run(5)).toEqual(run(5));
    expect(run(5)).not.toEqual(run(6));
  });

  it.each([2.5, 10, 50])('should stream %d readings a second', (rate) => {
    const id = 'stream-fields-flags';
    const meter = createVirtualMeter(setupOf(id, `healthy?rate=${rate}`));
    expect(meter.advanceTo(10.001)).toHaveLength(10 * rate);
  });

  it.each([4000, 60_000])('should show %d counts', (counts) => {
    const id = 'stream-fields-flags';
    const meter = createVirtualMeter(setupOf(id, `healthy?counts=${counts}`));
    const values = linesOf(meter, id, 30)
      .map(({ line }) => /[+-](\d+\.?\d*)/u.exec(line)?.[1])
      .filter((text) => text !== undefined)
      .map((text) => Number(text.replace('.', '')));
    expect(Math.max(...values)).toBeLessThanOrEqual(counts);
    expect(Math.max(...values)).toBeGreaterThan(counts / 20);
  });

  it('should need a conversion for a reading, and queue an error for what it does not know', () => {
    const meter = createVirtualMeter(setupOf('scpi-read', 'healthy?rate=5'));
    meter.receive('READ?\n');
    expect(meter.advanceTo(0.19)).toEqual([]);
    expect(meter.advanceTo(0.21)).toHaveLength(1);
    meter.receive('NONSENSE\nSYST:ERR?\nSYST:ERR?\n');
    expect(meter.advanceTo(0.3)).toEqual(['-113,"Undefined header"', '+0,"No error"']);
  });

  it('should forget half a request when the link is new', () => {
    const meter = createVirtualMeter(setupOf('scpi-read'));
    meter.receive('NONS');
    meter.reconnect();
    meter.receive('*IDN?\nSYST:ERR?\n');
    expect(meter.advanceTo(1)).toEqual(['PINWALK,VIRTUAL BENCH,0,1', '+0,"No error"']);
  });

  it('should switch itself off unless it is kept awake', () => {
    const id = 'stream-fields-flags';
    const quiet = createVirtualMeter(setupOf(id, 'healthy', { autoOffS: 5 }));
    const heard = createVirtualMeter(setupOf(id, 'healthy', { autoOffS: 5 }));
    expect(quiet.advanceTo(10).length).toBeLessThan(110);
    heard.advanceTo(4);
    heard.receive(' ');
    expect(heard.advanceTo(8.9).length).toBeGreaterThan(95);
    expect(quiet.advanceTo(20)).toEqual([]);
  });

  it('should fall silent and send garbage when told to', () => {
    const id = 'stream-fields-flags';
    const meter = createVirtualMeter(
      setupOf(id, 'healthy', {
        troubles: [
          { atS: 2, kind: 'silence', forS: 1 },
          { atS: 4, kind: 'garbage', forS: 0.5 },
          { atS: 6, kind: 'button', button: 'hold' },
        ],
      }),
    );
    meter.advanceTo(1.99);
    expect(meter.advanceTo(2.99)).toEqual([]);
    expect(meter.advanceTo(3.99).length).toBeGreaterThan(18);
    const garbled = meter.advanceTo(4.49).map((line) => decode(id, line));
    expect(garbled.length).toBeGreaterThan(8);
    expect(garbled.every((reading) => 'fault' in reading)).toBe(true);
    meter.advanceTo(6);
    const held = meter.advanceTo(7).map((line) => decode(id, line));
    expect(held.every((reading) => !('fault' in reading) && reading.flags?.[0] === 'hold')).toBe(
      true,
    );
  });

  it('should show under pressure what a loose part does', () => {
    const id = 'stream-fields-flags';
    const loose = [{ kind: 'loose', line: 'LANE0_P', part: 'FL1' } as const];
    const meter = createVirtualMeter(setupOf(id, 'healthy', { faults: loose, pace: steadyPace }));
    while (meter.touchedPin() !== '2') meter.advanceTo(meter.nowS + 0.1);
    const read = () =>
      meter
        .advanceTo(meter.nowS + 0.8)
        .map((line) => decode(id, line))
        .at(-1);
    expect(read()).toHaveProperty('overload');
    meter.pressPart('FL1');
    expect(read()).toHaveProperty('value');
    meter.pressPart(null);
    expect(read()).toHaveProperty('overload');
  });

  it('should refuse a function the meter does not have', () => {
    const driver = shippedDriver('stream-fields-flags');
    const ohmsOnly = {
      ...driver,
      accuracy: driver.accuracy.filter((row) => row.function === 'resistance'),
    };
    expect(() =>
      createVirtualMeter(
        setupOf(driver.id, 'healthy', {
          driver: ohmsOnly,
          measure: { function: 'diode', polarity: 'black-walks' },
        }),
      ),
    ).toThrow('has no range for diode');
  });
});

import { describe, expect, it } from 'vitest';
import { parseBenchName, usualBench } from '../../src/bench/bench-name.js';
import { benchSetup } from '../../src/bench/bench-setup.js';
import { steadyPace } from '../../src/bench/pace.js';
import { createVirtualLink } from '../../src/bench/virtual-link.js';
import type { VirtualMeterSetup } from '../../src/bench/virtual-meter.js';
import type { Profile } from '../../src/core/profile/profile-format.js';
import type { LinkListener } from '../../src/session/ports.js';
import { shippedDriver } from '../support/driver-files.js';
import { misnamed, verdictsOf, walkOnBench } from './support/live-walk.js';
import { shippedProfile } from './support/profile-files.js';
import { createSteppedClock } from './support/stepped-clock.js';

const driver = shippedDriver('stream-fields-flags');
const profile = shippedProfile('demo');

const linkWith = (change: Partial<VirtualMeterSetup> = {}) => {
  const clock = createSteppedClock(50);
  const setup = benchSetup({ bench: usualBench, driver, profile, hears: true });
  const link = createVirtualLink('virtual:demo', { ...setup, ...change }, clock);
  const told: string[] = [];
  const frames: number[] = [];
  const listener: LinkListener = {
    opened: (t, again) => told.push(`${again ? 'again' : 'opened'} ${t}`),
    frame: (t) => frames.push(t),
    lost: (t, reason) => told.push(`lost ${t}: ${reason}`),
    failed: (t) => told.push(`failed ${t}`),
    ended: (t) => told.push(`ended ${t}`),
  };
  return { clock, link, listener, told, frames };
};

describe('the virtual link', () => {
  it('should say that it is simulated', () => {
    expect(linkWith().link.title).toBe('virtual:demo (simulated)');
  });

  it('should open after the call returns and then stamp frames with the clock', () => {
    const { clock, link, listener, told, frames } = linkWith();
    link.open(listener);
    expect(told).toEqual([]);
    clock.run(51);
    expect(told).toEqual(['opened 50']);
    expect(frames).toHaveLength(20);
    expect(frames[0]).toBeCloseTo(50.05, 9);
    expect(frames).toEqual([...frames].sort((a, b) => a - b));
  });

  it('should lose the lead and come back with it', () => {
    const { clock, link, listener, told, frames } = linkWith({
      troubles: [{ atS: 2, kind: 'drop', forS: 3 }],
    });
    link.open(listener);
    clock.run(54.99);
    expect(told).toEqual(['opened 50', 'lost 52: the simulated lead was pulled']);
    const before = frames.length;
    clock.run(56);
    expect(told.at(-1)).toBe('again 55');
    expect(frames.length).toBeGreaterThan(before + 15);
    expect(frames.filter((t) => t > 52 && t < 55)).toEqual([]);
  });

  it('should say nothing once closed, and refuse a second opening', async () => {
    const { clock, link, listener, frames } = linkWith();
    link.open(listener);
    expect(() => link.open(listener)).toThrow('opened twice');
    clock.run(51);
    await link.close();
    clock.run(60);
    expect(frames).toHaveLength(20);
  });
});

/** The first pins of the demo profile: two pairs and four grounds. */
const shortened: Profile = {
  ...profile,
  connector: { ...profile.connector, pins: profile.connector.pins.slice(0, 10) },
};

describe('a walk on the virtual bench', () => {
  it.each(['stream-fields-flags', 'scpi-read', 'scpi-initiate-fetch'])(
    'should finish hands-free with every fault at its pin: %s',
    (id) => {
      const walk = walkOnBench({
        driver: shippedDriver(id),
        profile: shortened,
        bench: { speed: 2 },
        setup: {
          pace: steadyPace,
          faults: [
            { kind: 'drifted', line: 'LANE0_N', factor: 1.5 },
            { kind: 'loose', line: 'LANE1_P', part: 'FL2' },
            { kind: 'leaky', line: 'LANE2_N', ohms: 120 },
          ],
        },
      });
      expect(walk.finished).toBe(true);
      expect(misnamed(walk)).toEqual([]);
      expect([...verdictsOf(walk.events)].filter(([, verdict]) => verdict !== 'normal')).toEqual([
        ['3', 'high'],
        ['5', 'open'],
        ['9', 'low'],
      ]);
    },
  );

  it('should give the same events again with the same seed', () => {
    const walk = (seed: number) =>
      walkOnBench({ driver, profile: shortened, bench: { ...parseBenchName('demo'), seed } })
        .events;
    expect(walk(3)).toEqual(walk(3));
    expect(walk(3)).not.toEqual(walk(4));
  });
});

import { describe, expect, it } from 'vitest';
import { parseBenchName } from '../../src/bench/bench-name.js';
import { benchSetup } from '../../src/bench/bench-setup.js';
import type { Fault } from '../../src/bench/faults.js';
import { steadyPace } from '../../src/bench/pace.js';
import { createVirtualMeter } from '../../src/bench/virtual-meter.js';
import { shippedDriver } from '../support/driver-files.js';
import { shippedProfile } from './support/profile-files.js';

interface Touch {
  readonly pin: string;
  readonly fromS: number;
  readonly toS: number;
}

/** Every contact of a deaf walk with the given board. */
const touches = (seconds: number, faults: readonly Fault[], rate = 20): Touch[] => {
  const setup = benchSetup({
    bench: parseBenchName(`healthy?rate=${rate}`),
    driver: shippedDriver('stream-fields-flags'),
    profile: shippedProfile('demo'),
    hears: false,
  });
  const meter = createVirtualMeter({ ...setup, faults, pace: steadyPace });
  const found: Touch[] = [];
  let pin: string | null = null;
  let sinceS = 0;
  for (let s = 0.01; s < seconds; s += 0.01) {
    meter.advanceTo(s);
    const now = meter.touchedPin();
    if (now === pin) continue;
    if (pin !== null) found.push({ pin, fromS: sinceS, toS: s });
    pin = now;
    sinceS = s;
  }
  return found;
};

const pins = (all: readonly Touch[]) => all.map(({ pin }) => pin);

describe('a technician who does not hear', () => {
  it('should touch two grounds and walk every pin in order, open ones answered by taps', () => {
    const walk = pins(touches(200, []));
    const order = shippedProfile('demo').connector.pins.flatMap(({ pin, line }) => {
      const silent = ['AUX_P', 'AUX_N', 'SPARE_1', 'SPARE_2'].includes(line);
      return silent ? [pin, '1', '1'] : [pin];
    });
    expect(walk).toEqual(['1', '4', ...order]);
  });

  it('should touch what is not normal twice', () => {
    const walk = pins(touches(30, [{ kind: 'leaky', line: 'LANE0_P', ohms: 300 }]));
    expect(walk.slice(2, 7)).toEqual(['1', '2', '2', '3', '4']);
  });

  it.each([2.5, 20])('should answer an open line after the question, at %d readings/s', (rate) => {
    const walk = touches(40, [{ kind: 'open', line: 'LANE0_P' }], rate);
    const at = pins(walk).indexOf('2');
    const [dwell, first, second, next] = walk.slice(at);
    expect([first?.pin, second?.pin, next?.pin]).toEqual(['1', '1', '3']);
    expect((dwell?.toS ?? 0) - (dwell?.fromS ?? 0)).toBeGreaterThan(2.5 + 0.2 + 0.5);
    for (const tap of [first, second])
      expect((tap?.toS ?? 0) - (tap?.fromS ?? 0)).toBeGreaterThanOrEqual(
        Math.max(0.39, 2.5 / rate),
      );
    const gapS = (second?.fromS ?? 0) - (first?.toS ?? 0);
    expect(gapS).toBeGreaterThan(0.3);
    expect(gapS).toBeLessThan(0.82);
  });

  it('should hold a charging supply until it stands', () => {
    const walk = touches(150, []);
    const held = walk.find(({ pin }) => pin === '26');
    const quick = walk.find(({ pin }) => pin === '21');
    expect((held?.toS ?? 0) - (held?.fromS ?? 0)).toBeGreaterThan(3);
    expect((quick?.toS ?? 0) - (quick?.fromS ?? 0)).toBeLessThan(2.5);
  });

  it('should tap another ground when the first one is torn', () => {
    const torn: Fault = { kind: 'open', line: 'GND', pin: '1' };
    const walk = pins(touches(40, [torn, { kind: 'open', line: 'LANE0_P' }]));
    expect(walk.slice(0, 3)).toEqual(['1', '4', '7']);
    const at = walk.lastIndexOf('2');
    expect(walk.slice(at, at + 4)).toEqual(['2', '4', '4', '3']);
  });
});

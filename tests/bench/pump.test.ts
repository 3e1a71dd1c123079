import { describe, expect, it } from 'vitest';
import { createPump } from '../../src/bench/pump.js';
import type { VirtualMeter } from '../../src/bench/virtual-meter.js';
import { createSteppedClock } from './support/stepped-clock.js';

/** Says its world's time once a second. */
const ticking = (): VirtualMeter => {
  let nowS = 0;
  let said = 0;
  return {
    get nowS() {
      return nowS;
    },
    nextS: () => said + 1,
    advanceTo: (worldS) => {
      const lines: string[] = [];
      while (said + 1 <= worldS) {
        said += 1;
        lines.push(String(said));
      }
      nowS = Math.max(nowS, worldS);
      return lines;
    },
    receive: () => undefined,
    reconnect: () => undefined,
    hear: () => undefined,
    pressPart: () => undefined,
    touchedPin: () => null,
  };
};

const running = () => {
  const clock = createSteppedClock(100);
  const said: [number, string][] = [];
  const pump = createPump(clock, ticking(), (line) => said.push([clock.now(), line]));
  return { clock, said, pump };
};

describe('the pump', () => {
  it('should say each line when it is due, and nothing before it starts', () => {
    const { clock, said, pump } = running();
    clock.run(105);
    expect(said).toEqual([]);
    pump.start();
    clock.run(107.5);
    expect(said).toEqual([
      [106, '1'],
      [107, '2'],
    ]);
  });

  it('should stand still while paused and go on where it was', () => {
    const { clock, said, pump } = running();
    pump.start();
    clock.run(102);
    pump.pause();
    clock.run(200);
    pump.start();
    clock.run(201);
    expect(said.map(([, line]) => line)).toEqual(['1', '2', '3']);
    expect(said.at(-1)?.[0]).toBe(201);
  });

  it('should not rush to catch up after the process was asleep', () => {
    const { clock, said, pump } = running();
    pump.start();
    clock.run(101);
    clock.sleep(60);
    clock.run(164);
    expect(said.map(([, line]) => line)).toEqual(['1', '2', '3', '4', '5']);
    expect(said[1]?.[0]).toBe(161);
    expect(said[2]?.[0]).toBe(162);
  });
});

import { describe, expect, it } from 'vitest';
import { addToCreep, beginCreep, type Creep } from '../../../src/core/walk/creep.js';
import { assessCreep, type CreepState } from '../../../src/core/walk/creep-state.js';

/** An exact exponential, read at even times. */
const exponential = (
  level: number,
  share: number,
  tauS: number,
  forS: number,
  rate: number,
): Creep => {
  const at = (t: number): number => level * (1 + share * Math.exp(-t / tauS));
  let creep = beginCreep(0, at(0));
  for (let i = 1; i / rate <= forS; i += 1) creep = addToCreep(creep, i / rate, at(i / rate));
  return creep;
};

const assessed = (creep: Creep, slow = 0.01): CreepState =>
  assessCreep(
    creep,
    { noise: 0.0003 * Math.abs(creep.last), noiseWeight: 10, slow },
    {
      remainder: 0.005 * Math.abs(creep.last),
      error: 0.015 * Math.abs(creep.last),
      slow: 0.005 * Math.abs(creep.last),
    },
  );

describe('assessCreep on exact exponentials', () => {
  it.each([
    [20, 0.06],
    [20, 0.15],
    [20, 0.3],
    [10, 0.2],
    [10, 0.5],
    [4, 0.6],
  ])(
    'at %d readings/s, time constant %d s: the level is within 0.5 %% after four of them',
    (rate, tauS) => {
      for (const share of [-0.3, 0.3]) {
        for (const level of [0.9, 388, 51_000]) {
          const state = assessed(
            exponential(level, share, tauS, Math.max(4 * tauS, 5 / rate), rate),
          );
          expect(Math.abs(state.level / level - 1)).toBeLessThan(0.005);
        }
      }
    },
  );

  it('the remainder is what is left, with its sign', () => {
    const half = assessed(exponential(388, -0.3, 0.3, 0.9, 20));
    expect(half.remainder / (388 * -0.3 * Math.exp(-3))).toBeGreaterThan(0.7);
    expect(half.remainder / (388 * -0.3 * Math.exp(-3))).toBeLessThan(1.3);
  });

  it('is surer of having settled the longer it lasts, and not before there is little left', () => {
    const settled = [0.3, 0.6, 0.9, 2.4].map(
      (forS) => assessed(exponential(388, -0.3, 0.3, forS, 20)).settled,
    );
    expect(settled[0]).toBeLessThan(0.05);
    expect(settled[1]).toBeLessThan(0.05);
    expect(settled[3]).toBeGreaterThan(0.95);
  });

  it('a flat line has settled, at once and without scatter', () => {
    const state = assessed(exponential(388, 0, 1, 0.5, 20));
    expect(state.level).toBeCloseTo(388, 6);
    expect(state.settled).toBeGreaterThan(0.9);
    expect(state.scatter).toBeLessThan(0.2);
  });

  it('sees a slow charge for what it is', () => {
    const state = assessed(exponential(900, -0.95, 2, 2, 10), 0.4);
    expect(state.charging).toBeGreaterThan(0.9);
    expect(state.settled).toBeLessThan(0.01);
  });

  it('refuses a single reading', () => {
    expect(() => assessed(beginCreep(0, 388))).toThrow(RangeError);
  });
});

// The walk as laid out for one function: whose limits hold, and whose do not.
import { describe, expect, it } from 'vitest';
import { expectsLittle, planWalk } from '../../../src/core/profile/plan.js';
import { profileOf } from '../context/demo-board.js';

const rail = {
  kind: 'supply',
  expect: { resistance: { nominal: 300, tolerance: 0.2 }, diode: { nominal: 0.4, tolerance: 0.1 } },
  limits: { short: 200, open: 5000 },
} as const;
const profile = profileOf({ RAIL: rail, GND: { kind: 'ground', limits: { short: 8 } } });

const planned = (measure: Parameters<typeof planWalk>[1]) => planWalk(profile, measure).pins;

describe('planWalk', () => {
  it("should hold a line's own limits in the function that the profile measures", () => {
    const [own, ground] = planned({ function: 'resistance', polarity: 'red-walks' });
    expect(own).toMatchObject({ shortLimit: 200, openLimit: 5000 });
    expect(ground?.expected).toEqual({ nominal: 0, low: 0, high: 8 });
  });

  it('should hold them in continuity too, which is in ohm as well', () => {
    const [own] = planned({ function: 'continuity', polarity: 'red-walks' });
    expect(own).toMatchObject({ shortLimit: 200, openLimit: 5000 });
  });

  it('should never take 200 ohm for 200 volt', () => {
    const [own, ground] = planned({ function: 'diode', polarity: 'red-walks' });
    expect(own).toMatchObject({ shortLimit: 0.03, openLimit: null });
    expect(own?.expected).toMatchObject({ nominal: 0.4 });
    expect(ground?.expected).toEqual({ nominal: 0, low: 0, high: 0.03 });
  });

  it('should not take the volts of a diode profile for ohms', () => {
    const inVolts = profileOf({ RAIL: { kind: 'supply', limits: { short: 0.1 } } }, undefined, {
      function: 'diode',
      polarity: 'red-walks',
    });
    const measure = { function: 'resistance', polarity: 'red-walks' } as const;
    expect(planWalk(inVolts, measure).pins[0]?.shortLimit).toBe(5);
    expect(planWalk(inVolts).pins[0]?.shortLimit).toBe(0.1);
  });
});

describe('expectsLittle', () => {
  const bare = { kind: 'signal' } as const;
  const known = {
    kind: 'signal',
    expect: { resistance: { nominal: 390, tolerance: 0.1 } },
  } as const;
  const ground = { kind: 'ground' } as const;

  it('should be so where most lines beside the grounds have no value', () => {
    const profile = profileOf({ A: bare, B: bare, C: known, G: ground, H: ground });
    expect(expectsLittle(planWalk(profile))).toBe(true);
  });

  it('should not be so where half of them have one, or there are only grounds', () => {
    expect(expectsLittle(planWalk(profileOf({ A: bare, C: known, G: ground })))).toBe(false);
    expect(expectsLittle(planWalk(profileOf({ G: ground })))).toBe(false);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { preferredValues } from '../../../src/core/numbers/preferred-values.js';
import { occupiedBands } from '../../../src/core/pads/occupied-bands.js';
import { padCommands } from '../../../src/core/pads/pad.js';
import { type PadMeasure, type PadPlan, planPads } from '../../../src/core/pads/plan-pads.js';
import { apart, type Choice, spreadValues } from '../../../src/core/pads/spread-values.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { demo, plainMeter } from './demo-profile.js';

const ohms: PadMeasure = { function: 'resistance', polarity: 'red-walks' };
const diode: PadMeasure = {
  function: 'diode',
  polarity: 'black-walks',
  diode: { testAmps: 0.001, overloadVolts: 2.5 },
};

const planned = (plan: PadPlan) => {
  if (!plan.planned) throw new Error(plan.reason);
  return plan;
};
const refused = (plan: PadPlan) => {
  if (plan.planned) throw new Error('the plan was not refused');
  return plan;
};

describe('values spread as far as they can be', () => {
  const rising = fc
    .uniqueArray(fc.integer({ min: 10, max: 10_000 }), { minLength: 4, maxLength: 9 })
    .map((values) =>
      values
        .sort((a, b) => a - b)
        .map(
          (value, i): Choice => ({
            low: value * 0.99,
            high: value * 1.01,
            clearance: 0.02 + 0.1 * (i % 4),
          }),
        ),
    );

  it('should have the largest smallest distance of all choices', () => {
    fc.assert(
      fc.property(rising, fc.integer({ min: 1, max: 4 }), (choices, count) => {
        const found = spreadValues(choices, count);
        const best = Math.max(...subsets(choices, count).map(smallestDistance));
        if (found === null) expect(best).toBeLessThanOrEqual(0);
        else {
          expect(found.chosen).toHaveLength(count);
          expect(found.distance).toBeCloseTo(best, 12);
          expect(smallestDistance(found.chosen)).toBeCloseTo(best, 12);
        }
      }),
      { seed: 8, numRuns: 200 },
    );
  });

  it('should be none where there are too few', () => {
    expect(spreadValues([{ low: 1, high: 2, clearance: 1 }], 2)).toBeNull();
    expect(spreadValues([{ low: 1, high: 2, clearance: -1 }], 1)).toBeNull();
  });
});

const subsets = <T>(all: readonly T[], count: number): T[][] =>
  count === 0
    ? [[]]
    : all.flatMap((one, i) => subsets(all.slice(i + 1), count - 1).map((rest) => [one, ...rest]));

const smallestDistance = (chosen: readonly Choice[]): number =>
  Math.min(
    ...chosen.map(({ clearance }) => clearance),
    ...chosen.flatMap((a, i) => chosen.slice(i + 1).map((b) => apart(a, b))),
  );

describe('the plan of pads in resistance', () => {
  it.each(['E12', 'E24', 'E96'] as const)(
    'should be preferred values of %s, a command each',
    (series) => {
      const { pads } = planned(planPads(demo, ohms, plainMeter, padCommands, { series }));
      expect(pads.map(({ command }) => command)).toEqual(padCommands);
      const digits = preferredValues(series);
      for (const pad of pads) {
        const [mantissa = 0] = pad.ohms.toExponential(2).split('e').map(Number);
        expect(digits).toContain(Math.round(100 * mantissa));
      }
    },
  );

  it('should keep every pad clear of the others and of what the profile may read', () => {
    const { pads, distance } = planned(planPads(demo, ohms, plainMeter, padCommands));
    const bands = occupiedBands(demo, ohms);
    expect(bands.length).toBeGreaterThan(20);
    expect(distance).toBeGreaterThan(0.1);
    const least = Math.log1p(distance) - 1e-9;
    pads.forEach((pad, i) => {
      for (const band of bands) expect(apart(pad, band)).toBeGreaterThanOrEqual(least);
      for (const other of pads.slice(i + 1))
        expect(apart(pad, other)).toBeGreaterThanOrEqual(least);
    });
  });

  it('should count a branch as something that may be read', () => {
    const bands = occupiedBands(demo, ohms);
    // R41 alone reads 10 kΩ once the reset line is broken behind it.
    expect(bands.some(({ by, low, high }) => by === 'R41' && low < 10_000 && high > 10_000)).toBe(
      true,
    );
  });

  it('should stay under a fixed range, and say what autorange does without one', () => {
    const fixed = planned(planPads(demo, { ...ohms, range: 60_000 }, plainMeter, ['open', 'back']));
    for (const { high } of fixed.pads) expect(high).toBeLessThan(60_000);
    expect(fixed.notes).toEqual([]);
    const free = planned(planPads(demo, ohms, plainMeter, ['open', 'back']));
    expect(free.notes.join()).toMatch(/no fixed range/);
  });

  it('should leave wider gaps for a coarser meter', () => {
    const coarse = {
      ...plainMeter,
      rows: [{ fullScale: null, resolution: null, percent: 5, counts: 10 }],
    };
    const [fine, wide] = [plainMeter, coarse].map(
      (meter) => planned(planPads(demo, ohms, meter, padCommands.slice(0, 3))).distance,
    );
    expect(wide).toBeLessThan(fine as number);
  });

  it('should refuse more than fit, and tell how many do', () => {
    const crowded = structuredClone(demo) as Profile;
    const line = crowded.lines.TEMP_SENSE;
    if (line === undefined) throw new Error('no such line');
    line.expect = { resistance: { nominal: 20_000, tolerance: 0.98 } };
    line.limits = { open: 50_000 };
    const { reason, fits } = refused(planPads(crowded, ohms, plainMeter, padCommands));
    expect(fits).toBeGreaterThan(0);
    expect(fits).toBeLessThan(padCommands.length);
    expect(reason).toContain(`only ${fits}`);
  });
});

describe('the plan of pads in the diode test', () => {
  it('should give distinct volts under overload, clear of the drops of the profile', () => {
    const { pads, notes } = planned(
      planPads(demo, diode, plainMeter, ['open', 'back', 'next'], { series: 'E96' }),
    );
    for (const { ohms: value, low, high } of pads) {
      expect(low).toBeLessThan(value * 0.001);
      expect(high).toBeGreaterThan(value * 0.001);
      expect(high).toBeLessThan(2.5);
    }
    expect(notes.join()).toMatch(/ohms times 1 mA/);
  });

  it('should refuse commands that leave no distinct volts', () => {
    const { reason } = refused(planPads(demo, diode, plainMeter, padCommands, { series: 'E12' }));
    expect(reason).toMatch(/under the overload of 2.5 V in the diode test/);
  });

  it('should refuse while the test current is not known, and tell how to find it', () => {
    const unknown: PadMeasure = { function: 'diode', polarity: 'black-walks' };
    const { reason } = refused(planPads(demo, unknown, plainMeter, ['open']));
    expect(reason).toMatch(/current is not known; read a 1 kΩ resistor/);
  });
});

describe('what is no plan', () => {
  it.each([
    ['volts', { ...ohms, function: 'dc-volts' as const }, ['open'] as const, /nothing in volts/],
    [
      'continuity',
      { ...ohms, function: 'continuity' as const },
      ['open'] as const,
      /low ohms only/,
    ],
    ['no command', ohms, [] as const, /no command was asked for/],
    ['a command twice', ohms, ['open', 'open'] as const, /named twice/],
  ])('should refuse %s', (_, measure, commands, message) => {
    expect(refused(planPads(demo, measure, plainMeter, commands)).reason).toMatch(message);
  });
});

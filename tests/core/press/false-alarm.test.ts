import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adjustedPValue, falseAlarmRate } from '../../../src/core/press/false-alarm.js';
import { lockChance } from '../../../src/core/press/lock-chance.js';
import { oneSidedP } from '../../../src/core/press/look-table.js';
import { paceFor } from '../../../src/core/press/pace.js';
import { answersNeeded, decisiveP } from '../../../src/core/press/press-design.js';
import { strata } from '../../../src/core/press/schedule.js';

/** Brute force: every one of the 2^16 orders of 16 windows, press and release by turns. */
const worstByCounting = (
  stops: (
    cycles: number,
    pressed: number,
    released: number,
    fits: number,
    reversed: number,
  ) => boolean,
): number => {
  const orders = new Array<number>(17).fill(0);
  const stopped = new Array<number>(17).fill(0);
  for (let order = 0; order < 2 ** 16; order += 1) {
    let [pressed, released, fits, reversed, contacts, stop] = [0, 0, 0, 0, 0, false];
    for (let cycle = 1; cycle <= 8; cycle += 1) {
      const press = (order >> (2 * cycle - 2)) & 1;
      const release = (order >> (2 * cycle - 1)) & 1;
      pressed += press;
      released += release;
      contacts += press + release;
      fits += press & (1 - release);
      reversed += release & (1 - press);
      stop ||= cycle >= 4 && stops(cycle, pressed, released, fits, reversed);
    }
    orders[contacts] = (orders[contacts] ?? 0) + 1;
    if (stop) stopped[contacts] = (stopped[contacts] ?? 0) + 1;
  }
  return Math.max(...orders.map((all, contacts) => (stopped[contacts] ?? 0) / all));
};

describe('adjustedPValue', () => {
  it.each([1 / 924, 1 / 252, 1 / 70, 5 / 210, 17 / 70])(
    'agrees with counting all 65,536 orders, at %d',
    (p) => {
      const counted = worstByCounting(
        (cycles, pressed, released) =>
          Math.min(oneSidedP(cycles, pressed, released), oneSidedP(cycles, released, pressed)) <=
          p + 1e-12,
      );
      expect(adjustedPValue(p)).toBeCloseTo(Math.max(p, counted), 12);
    },
  );

  it('never falls below the raw value and rises with it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (a, b) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          expect(adjustedPValue(low)).toBeGreaterThanOrEqual(low);
          expect(adjustedPValue(low)).toBeLessThanOrEqual(adjustedPValue(high));
        },
      ),
      { seed: 4, numRuns: 60 },
    );
  });

  it('refuses what is no p-value', () => {
    expect(() => adjustedPValue(-0.1)).toThrow(RangeError);
    expect(() => adjustedPValue(Number.NaN)).toThrow(RangeError);
  });
});

describe('falseAlarmRate', () => {
  it('agrees with counting for the windows alone', () => {
    const counted = worstByCounting((cycles, pressed, released, fits, reversed) => {
      const needed = answersNeeded(cycles);
      return (
        (fits >= needed && oneSidedP(cycles, pressed, released) <= decisiveP) ||
        (reversed >= needed && oneSidedP(cycles, released, pressed) <= decisiveP)
      );
    });
    expect(falseAlarmRate(1)).toBeCloseTo(counted, 12);
    expect(counted).toBeCloseTo(0.0545, 4);
  });

  it('is nothing where edges never fall into their zones, and rises with their chance', () => {
    const rates = [0, 0.1, 0.3, 0.6, 1].map(falseAlarmRate);
    expect(rates[0]).toBe(0);
    expect(rates).toEqual([...rates].sort((a, b) => a - b));
  });

  it('stays under one in a thousand at every rate the design names', () => {
    const rates = Array.from({ length: 96 }, (_, i) => 2.5 + i / 2);
    const worst = Math.max(...rates.map((rate) => falseAlarmRate(lockChance(paceFor(1 / rate)))));
    expect(worst).toBeGreaterThan(0.0003);
    expect(worst).toBeLessThan(0.001);
  });

  it('refuses what is no chance', () => {
    expect(() => falseAlarmRate(1.2)).toThrow(RangeError);
  });
});

describe('lockChance', () => {
  it('is the mean of zone over gap, by adding up over the windows', () => {
    const pace = paceFor(0.1);
    const steps = 400;
    let sum = 0;
    for (let quarter = 0; quarter < strata; quarter += 1) {
      const meanInZone = (['press', 'release'] as const).map((cue) => {
        const { latestS, shortestS, longestS } = pace[cue];
        let share = 0;
        for (let i = 0; i < steps; i += 1) {
          const fraction = (quarter + (i + 0.5) / steps) / strata;
          const lengthS = shortestS + fraction * (longestS - shortestS);
          share += (latestS - pace.earliestS) / (lengthS - pace.tailS);
        }
        return share / steps;
      });
      sum += (meanInZone[0] ?? 0) * (meanInZone[1] ?? 0);
    }
    expect(lockChance(pace)).toBeCloseTo(sum / strata, 6);
  });
});

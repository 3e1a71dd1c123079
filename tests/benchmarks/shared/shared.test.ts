// The benchmark's own numbers: random streams, proportions and quantiles.
import { describe, expect, it } from 'vitest';
import { proportion } from './proportion.js';
import { quantile } from './quantile.js';
import { seeded } from './random.js';
import { textTable } from './text-table.js';

const draws = Array.from({ length: 20_000 });

describe('seeded', () => {
  it('repeats itself for a seed and differs between seeds and labels', () => {
    const first = (seed: string) => seeded(seed).unit();
    expect(first('a')).toBe(first('a'));
    expect(first('a')).not.toBe(first('b'));
    expect(seeded('a').fork('x').unit()).not.toBe(seeded('a').fork('y').unit());
  });

  it('forks the same stream however much was drawn before', () => {
    const drawn = seeded('a');
    drawn.unit();
    expect(drawn.fork('x').unit()).toBe(seeded('a').fork('x').unit());
  });

  it('has the moments of its laws', () => {
    const random = seeded('moments');
    const mean = (draw: () => number) =>
      draws.reduce<number>((sum) => sum + draw(), 0) / draws.length;
    // Five standard errors of the mean of 20,000 draws.
    expect(Math.abs(mean(() => random.unit()) - 0.5)).toBeLessThan(0.0103);
    expect(Math.abs(mean(() => random.normal()))).toBeLessThan(0.0354);
    expect(Math.abs(mean(() => random.normal() ** 2) - 1)).toBeLessThan(0.05);
    expect(Math.abs(mean(() => random.exponential(2)) - 2)).toBeLessThan(0.0708);
    expect(Math.abs(mean(() => Math.log10(random.logUniform([1, 100]))) - 1)).toBeLessThan(0.0205);
    expect(Math.abs(mean(() => random.whole([1, 3])) - 2)).toBeLessThan(0.0289);
  });
});

describe('proportion', () => {
  it('agrees with the closed form at no events: z² / (n + z²)', () => {
    const { low, high, share } = proportion(0, 100);
    expect([share, low]).toEqual([0, 0]);
    expect(high).toBeCloseTo(3.841459 / 103.841459, 6);
  });

  it('refuses what is no count of trials', () => {
    for (const [count, of] of [
      [1, 0],
      [3, 2],
      [-1, 4],
      [0.5, 4],
    ] as const)
      expect(() => proportion(count, of)).toThrow(RangeError);
  });
});

describe('quantile', () => {
  it('interpolates between order statistics', () => {
    expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5);
    expect(quantile([4, 1, 3, 2], 1)).toBe(4);
    expect(quantile([7], 0.95)).toBe(7);
  });

  it('refuses an empty sample and a level outside 0 to 1', () => {
    expect(() => quantile([], 0.5)).toThrow(RangeError);
    expect(() => quantile([1], 1.1)).toThrow(RangeError);
    expect(() => quantile([1], Number.NaN)).toThrow(RangeError);
  });
});

describe('textTable', () => {
  it('aligns the first column left and the others right', () => {
    expect(
      textTable([
        ['a', 'bb'],
        ['ccc', 'd'],
      ]),
    ).toBe('a    bb\nccc   d');
  });
});

import { describe, expect, it } from 'vitest';
import { seeded, xorshift128 } from '../../src/bench/seeded.js';

describe('the seeded generator', () => {
  it("should give Marsaglia's sequence from the words of his paper", () => {
    // Words: Marsaglia, "Xorshift RNGs", J. Stat. Softw. 8 (14), 2003. Outputs from memory.
    const next = xorshift128([123456789, 362436069, 521288629, 88675123]);
    expect(Array.from({ length: 5 }, next)).toEqual([
      3701687786, 458299110, 2500872618, 3633119408, 516391518,
    ]);
  });

  it('should repeat for the same seed and label, and differ for any other', () => {
    const first = (seed: number, label: string) => {
      const random = seeded(seed, label);
      return Array.from({ length: 4 }, () => random.fraction());
    };
    expect(first(7, 'meter')).toEqual(first(7, 'meter'));
    const others = [first(7, 'meter'), first(8, 'meter'), first(7, 'board'), first(7, 'retem')];
    expect(new Set(others.map(String)).size).toBe(4);
  });

  it('should spread evenly and normally', () => {
    const random = seeded(3, 'spread');
    const n = 20_000;
    const even = Array.from({ length: n }, () => random.fraction());
    const normal = Array.from({ length: n }, () => random.normal());
    const mean = (values: number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
    const variance = (values: number[]) => mean(values.map((v) => v * v)) - mean(values) ** 2;
    // Five standard errors of each estimate.
    expect(Math.abs(mean(even) - 1 / 2)).toBeLessThan(5 * Math.sqrt(1 / 12 / n));
    expect(Math.abs(variance(even) - 1 / 12)).toBeLessThan(5 * Math.sqrt(1 / 180 / n));
    expect(Math.abs(mean(normal))).toBeLessThan(5 / Math.sqrt(n));
    expect(Math.abs(variance(normal) - 1)).toBeLessThan(5 * Math.sqrt(2 / n));
    expect(Math.min(...even)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...even)).toBeLessThan(1);
  });

  it('should keep whole numbers under their count', () => {
    const random = seeded(5, 'below');
    const drawn = new Set(Array.from({ length: 500 }, () => random.below(4)));
    expect([...drawn].sort()).toEqual([0, 1, 2, 3]);
  });
});

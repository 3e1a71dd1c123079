import { describe, expect, it } from 'vitest';
import { binomialCoefficient } from '../../../src/core/numbers/binomial-coefficient.js';
import { clopperPearsonInterval } from '../../../src/core/numbers/clopper-pearson-interval.js';
import { exactToleranceFactor } from '../../../src/core/numbers/exact-tolerance-factor.js';
import { howeToleranceFactor } from '../../../src/core/numbers/howe-tolerance-factor.js';
import { normalCdf } from '../../../src/core/numbers/normal-cdf.js';
import { oneSidedToleranceFactor } from '../../../src/core/numbers/one-sided-tolerance-factor.js';
import { wilsonInterval } from '../../../src/core/numbers/wilson-interval.js';

describe.each([
  ['exactToleranceFactor', exactToleranceFactor],
  ['howeToleranceFactor', howeToleranceFactor],
  ['oneSidedToleranceFactor', oneSidedToleranceFactor],
])('%s', (_name, factor) => {
  it('should fall with more boards and rise with share and confidence', () => {
    expect(factor(5, 0.95, 0.95)).toBeGreaterThan(factor(9, 0.95, 0.95));
    expect(factor(5, 0.99, 0.95)).toBeGreaterThan(factor(5, 0.95, 0.95));
    expect(factor(5, 0.95, 0.99)).toBeGreaterThan(factor(5, 0.95, 0.95));
  });

  it('should refuse one board, and shares of nothing or all', () => {
    expect(() => factor(1, 0.9, 0.9)).toThrow('two or more values');
    expect(() => factor(2.5, 0.9, 0.9)).toThrow('two or more values');
    expect(() => factor(5, 1, 0.9)).toThrow('share');
    expect(() => factor(5, 0.9, 0)).toThrow('confidence');
  });
});

describe('exactToleranceFactor', () => {
  it('should keep its promise on simulated boards', () => {
    // A congruential sequence: fixed, so that the outcome is too.
    let state = 12345;
    const uniform = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (state + 0.5) / 2 ** 32;
    };
    const normal = (): number =>
      Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const k = exactToleranceFactor(4, 0.9, 0.9);
    const trials = 4000;
    let kept = 0;
    for (let trial = 0; trial < trials; trial += 1) {
      const boards = [normal(), normal(), normal(), normal()];
      const centre = boards.reduce((a, b) => a + b, 0) / 4;
      const s = Math.sqrt(boards.reduce((sum, x) => sum + (x - centre) ** 2, 0) / 3);
      if (normalCdf(centre + k * s) - normalCdf(centre - k * s) >= 0.9) kept += 1;
    }
    // Four standard deviations of a proportion of 0.9 in 4000 trials.
    expect(Math.abs(kept / trials - 0.9)).toBeLessThan(4 * Math.sqrt((0.9 * 0.1) / trials));
  });
});

describe('oneSidedToleranceFactor', () => {
  it('should have the closed form of two boards', () => {
    // For n = 2 the exact 95 %/95 % factor is 26.26: ISO 16269-6, from memory, recomputed.
    expect(oneSidedToleranceFactor(2, 0.95, 0.95)).toBeCloseTo(26.26, 2);
  });

  it('should take the confidence limit of the mean for a share of one half', () => {
    // Then it is t / sqrt(n): with five boards and 95 %, 2.131847 / sqrt(5).
    expect(oneSidedToleranceFactor(5, 0.5, 0.95)).toBeCloseTo(2.131847 / Math.sqrt(5), 6);
  });

  it('should refuse shares and confidences under one half', () => {
    expect(() => oneSidedToleranceFactor(5, 0.4, 0.9)).toThrow('0.5 or more');
    expect(() => oneSidedToleranceFactor(5, 0.9, 0.5)).toThrow('above 0.5');
  });
});

describe('clopperPearsonInterval', () => {
  const atLeast = (k: number, n: number, p: number): number => {
    let sum = 0;
    for (let i = k; i <= n; i += 1) {
      sum += Number(binomialCoefficient(n, i)) * p ** i * (1 - p) ** (n - i);
    }
    return sum;
  };

  it('should have ends at which the binomial tails are half the risk', () => {
    for (const [k, n] of [
      [1, 5],
      [4, 20],
      [19, 20],
    ] as const) {
      const { low, high } = clopperPearsonInterval(k, n, 0.95);
      expect(atLeast(k, n, low)).toBeCloseTo(0.025, 10);
      expect(1 - atLeast(k + 1, n, high)).toBeCloseTo(0.025, 10);
    }
  });

  it('should reach the end where nothing or everything succeeded', () => {
    expect(clopperPearsonInterval(0, 7, 0.9).low).toBe(0);
    expect(clopperPearsonInterval(7, 7, 0.9).high).toBe(1);
  });
});

describe('wilsonInterval', () => {
  it('should stay within 0 to 1 and mirror', () => {
    const none = wilsonInterval(0, 8, 0.95);
    expect(none.low).toBe(0);
    const all = wilsonInterval(8, 8, 0.95);
    expect(all.high).toBe(1);
    expect(all.low).toBeCloseTo(1 - none.high, 14);
  });
});

it.each([clopperPearsonInterval, wilsonInterval])(
  '%o should refuse counts that are not',
  (interval) => {
    expect(() => interval(1, 0, 0.9)).toThrow('whole counts');
    expect(() => interval(3, 2, 0.9)).toThrow('whole counts');
    expect(() => interval(0.5, 2, 0.9)).toThrow('whole counts');
    expect(() => interval(1, 2, 1)).toThrow('confidence');
  },
);

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRoot } from '../../../src/core/numbers/find-root.js';
import { integrate } from '../../../src/core/numbers/integrate.js';
import { normalDensity } from '../../../src/core/numbers/normal-density.js';

describe('findRoot', () => {
  it('should find roots to the last digits', () => {
    expect(findRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
    expect(findRoot((x) => Math.exp(-x) - 1e-12, 0, 100)).toBeCloseTo(12 * Math.LN10, 12);
    expect(findRoot((x) => x ** 9, -1, 2)).toBeCloseTo(0, 15);
    expect(findRoot((x) => (x < 0.3 ? -1 : 1), 0, 1)).toBeCloseTo(0.3, 14);
  });

  it('should take an end that is a root', () => {
    expect(findRoot((x) => x, 0, 5)).toBe(0);
    expect(findRoot((x) => x - 5, 0, 5)).toBe(5);
  });

  it('should find any root of a line within its bracket', () => {
    fc.assert(
      fc.property(fc.double({ min: -999, max: 999, noNaN: true }), (root) => {
        expect(findRoot((x) => 3 * (x - root), -1000, 1000)).toBeCloseTo(root, 10);
      }),
      { seed: 20260131 },
    );
  });

  it('should refuse a bracket without a change of sign, and what is not a number', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow('no change of sign between -1 and 1');
    expect(() => findRoot(() => NaN, -1, 1)).toThrow(RangeError);
    expect(() => findRoot((x) => (x === -1 || x === 1 ? x : NaN), -1, 1)).toThrow('no value');
  });
});

describe('integrate', () => {
  it('should integrate smooth functions', () => {
    expect(integrate((x) => x ** 3, 0, 2)).toBeCloseTo(4, 13);
    expect(integrate(Math.sin, 0, Math.PI)).toBeCloseTo(2, 12);
    expect(integrate(normalDensity, -10, 10)).toBeCloseTo(1, 12);
    expect(integrate((x) => x, 1, 1)).toBe(0);
  });

  it('should not miss a peak a few per cent wide', () => {
    const narrow = (x: number) => normalDensity((x - 0.37) / 0.01) / 0.01;
    expect(integrate(narrow, 0, 1)).toBeCloseTo(1, 10);
  });

  it('should refuse ends and values without end', () => {
    expect(() => integrate(normalDensity, -Infinity, 0)).toThrow('finite ends');
    expect(() => integrate((x) => 1 / x, -1, 1)).toThrow('not finite at 0');
  });
});

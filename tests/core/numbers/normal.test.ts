// References computed in 40-digit arithmetic; jstat as a second opinion.
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../../src/core/numbers/normal-cdf.js';
import { normalDensity } from '../../../src/core/numbers/normal-density.js';
import { normalQuantile } from '../../../src/core/numbers/normal-quantile.js';
import { relativeError } from './relative.js';

describe('normalCdf', () => {
  it.each([
    [-20, 2.7536241186062337e-89],
    [-8, 6.220960574271784e-16],
    [-5, 2.866515718791939e-7],
    [-3, 0.0013498980316300946],
    [-2.0001, 0.02274473339141056],
    [-2, 0.02275013194817921],
    [-1.9999, 0.02275553158476719],
    [-1, 0.15865525393145705],
    [-0.1, 0.460172162722971],
    [0.3, 0.6179114221889527],
    [1.4, 0.9192433407662289],
    [1.999, 0.9771958230673411],
    [2.5, 0.9937903346742238],
  ])('should be accurate at %d, in the tail too', (z, reference) => {
    expect(relativeError(normalCdf(z), reference)).toBeLessThan(3e-14);
  });

  it('should keep to 0, 1/2 and 1 at the ends and in the middle', () => {
    expect(normalCdf(-Infinity)).toBe(0);
    expect(normalCdf(-40)).toBe(0);
    expect(normalCdf(0)).toBe(0.5);
    expect(normalCdf(Infinity)).toBe(1);
  });

  it('should never fall and be symmetric', () => {
    let before = 0;
    for (let z = -9; z <= 9; z += 0.01) {
      const p = normalCdf(z);
      expect(p).toBeGreaterThanOrEqual(before);
      expect(p + normalCdf(-z)).toBeCloseTo(1, 14);
      before = p;
    }
  });

  it('should agree with jstat', () => {
    for (const z of [-4, -1.7, 0.2, 3.3]) {
      expect(normalCdf(z)).toBeCloseTo(jStat.normal.cdf(z, 0, 1), 13);
    }
  });

  it('should refuse what is not a number', () => {
    expect(() => normalCdf(NaN)).toThrow(RangeError);
    expect(() => normalDensity(NaN)).toThrow(RangeError);
  });
});

describe('normalQuantile', () => {
  it.each([
    [1e-300, -37.0470962993612],
    [1e-20, -9.262340089798407],
    [0.001, -3.0902323061678136],
    [0.025, -1.9599639845400543],
    [0.4999, -0.0002506628300880351],
    [0.975, 1.9599639845400543],
    [0.9995, 3.290526731491895],
  ])('should be accurate at %d', (p, reference) => {
    // 1 - p and p near 1/2 are themselves rounded: that, not the method, limits the middle and the top.
    expect(relativeError(normalQuantile(p), reference)).toBeLessThan(p === 0.4999 ? 1e-12 : 1e-13);
  });

  it('should undo the distribution function', () => {
    for (let z = -8; z <= 4; z += 0.37) expect(normalQuantile(normalCdf(z))).toBeCloseTo(z, 11);
  });

  it('should agree with jstat', () => {
    for (const p of [0.003, 0.2, 0.77]) {
      expect(normalQuantile(p)).toBeCloseTo(jStat.normal.inv(p, 0, 1), 9);
    }
  });

  it.each([0, 1, -0.1, 1.1, NaN])('should refuse a probability of %d', (p) => {
    expect(() => normalQuantile(p)).toThrow('between 0 and 1');
  });
});

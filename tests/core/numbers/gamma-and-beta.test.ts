// References computed in 40-digit arithmetic; jstat as a second opinion.
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { betaQuantile } from '../../../src/core/numbers/beta-quantile.js';
import { incompleteBeta } from '../../../src/core/numbers/incomplete-beta.js';
import { incompleteGamma } from '../../../src/core/numbers/incomplete-gamma.js';
import { logBeta } from '../../../src/core/numbers/log-beta.js';
import { logGamma } from '../../../src/core/numbers/log-gamma.js';
import { stirlingRemainder } from '../../../src/core/numbers/stirling-remainder.js';
import { relativeError } from './relative.js';

describe('logGamma', () => {
  it.each([
    [0.1, 2.252712651734206],
    [0.5, 0.5723649429247001],
    [1.5, -0.12078223763524522],
    [3, Math.LN2],
    [7.3, 7.147892523022249],
    [11.9, 17.25847745059552],
    [12, 17.502307845873887],
    [100.5, 361.4355404677776],
    [1e6, 12815504.569147611],
  ])('should be accurate at %d', (x, reference) => {
    expect(relativeError(logGamma(x), reference)).toBeLessThan(1e-13);
    expect(logGamma(x)).toBeCloseTo(jStat.gammaln(x), 7);
  });

  it('should be nil at 1 and 2', () => {
    expect(logGamma(1)).toBeCloseTo(0, 14);
    expect(logGamma(2)).toBeCloseTo(0, 14);
  });

  it('should refuse zero and below', () => {
    expect(() => logGamma(0)).toThrow('above 0');
    expect(() => logGamma(-1.5)).toThrow('above 0');
    expect(() => stirlingRemainder(11.9)).toThrow('12 or more');
  });
});

describe('logBeta', () => {
  it.each([
    [0.5, 0.5, 1.1447298858494002],
    [0.5, 50, -1.3811466014510412],
    [3, 20, -8.438149984075784],
    [30, 40, -48.30174909591612],
    [1e6, 0.5, -6.335390211057437],
  ])('should be accurate for %d and %d, either way round', (a, b, reference) => {
    expect(relativeError(logBeta(a, b), reference)).toBeLessThan(2e-14);
    expect(logBeta(b, a)).toBe(logBeta(a, b));
  });
});

describe('incompleteBeta', () => {
  it.each([
    [0.5, 2, 3, 0.6875],
    [0.01, 0.5, 9.5, 0.3337358623013416],
    [0.9, 20, 0.5, 0.041327483918087264],
    [0.2, 5, 16, 0.37035173609733096],
  ])('should be accurate at %d for shapes %d and %d', (x, a, b, reference) => {
    const { lower, upper } = incompleteBeta(x, a, b);
    expect(relativeError(lower, reference)).toBeLessThan(2e-14);
    expect(lower + upper).toBeCloseTo(1, 14);
    expect(incompleteBeta(1 - x, b, a).upper).toBeCloseTo(lower, 13);
    expect(lower).toBeCloseTo(jStat.beta.cdf(x, a, b), 7);
  });

  it('should be 0 and 1 at the ends, and refuse what lies beyond', () => {
    expect(incompleteBeta(0, 2, 3)).toEqual({ lower: 0, upper: 1 });
    expect(incompleteBeta(1, 2, 3)).toEqual({ lower: 1, upper: 0 });
    expect(() => incompleteBeta(1.01, 2, 3)).toThrow('0 to 1');
    expect(() => incompleteBeta(0.5, 0, 3)).toThrow('above 0');
  });
});

describe('incompleteGamma', () => {
  it.each([
    [0.5, 2, 0.9544997361036416, 0.04550026389635842],
    [0.5, 0.001, 0.03567059172967989, 0.9643294082703201],
    [21, 11.825, 0.009999593002715452, 0.9900004069972845],
    [3, 30, 0.9999999999549898, 4.501016648012124e-11],
    [50, 60, 0.9155933189063081, 0.08440668109369183],
  ])('should be accurate in both tails for shape %d at %d', (a, x, lower, upper) => {
    const tails = incompleteGamma(a, x);
    expect(relativeError(tails.lower, lower)).toBeLessThan(1e-13);
    expect(relativeError(tails.upper, upper)).toBeLessThan(1e-13);
  });

  it('should be 0 and 1 at the ends, and refuse a negative', () => {
    expect(incompleteGamma(2, 0)).toEqual({ lower: 0, upper: 1 });
    expect(incompleteGamma(2, Infinity)).toEqual({ lower: 1, upper: 0 });
    expect(() => incompleteGamma(2, -1)).toThrow('0 or more');
    expect(() => incompleteGamma(0, 1)).toThrow('above 0');
  });
});

describe('betaQuantile', () => {
  it('should undo the distribution function', () => {
    for (const [a, b] of [
      [0.5, 0.5],
      [1, 30],
      [5, 2],
    ] as const) {
      for (const p of [1e-6, 0.05, 0.5, 0.999]) {
        expect(incompleteBeta(betaQuantile(p, a, b), a, b).lower).toBeCloseTo(p, 12);
      }
    }
    expect(betaQuantile(0.3, 4, 7)).toBeCloseTo(jStat.beta.inv(0.3, 4, 7), 7);
  });
});

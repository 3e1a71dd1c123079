// References computed in 40-digit arithmetic; jstat as a second opinion, good to 1e-7 for t.
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { chiSquaredQuantile } from '../../../src/core/numbers/chi-squared-quantile.js';
import { normalCdf } from '../../../src/core/numbers/normal-cdf.js';
import { tCdf } from '../../../src/core/numbers/t-cdf.js';
import { tQuantile } from '../../../src/core/numbers/t-quantile.js';
import { relativeError } from './relative.js';

describe('tCdf', () => {
  it.each([
    [-2, 1, 0.14758361765043326],
    [-2.5, 3, 0.04385332350403277],
    [-30, 5, 3.859324310248026e-7],
    [-3, 16.656, 0.004096992052958502],
    [-4, 1000, 3.400495960439079e-5],
    [-6, 1e5, 9.899647278008813e-10],
  ])('should be accurate at %d with %d degrees of freedom', (t, nu, reference) => {
    expect(relativeError(tCdf(t, nu), reference)).toBeLessThan(1e-11);
    expect(tCdf(-t, nu)).toBeCloseTo(1 - reference, 13);
    expect(tCdf(t, nu)).toBeCloseTo(jStat.studentt.cdf(t, nu), 7);
  });

  it('should be the normal distribution in the end', () => {
    expect(tCdf(-1.5, Infinity)).toBe(normalCdf(-1.5));
    expect(tCdf(-1.5, 9e8)).toBeCloseTo(normalCdf(-1.5), 9);
    expect(tCdf(Infinity, 3)).toBe(1);
    expect(tCdf(-Infinity, 3)).toBe(0);
    expect(tCdf(0, 3)).toBe(0.5);
  });

  it('should refuse no degrees of freedom, and what is not a number', () => {
    expect(() => tCdf(1, 0)).toThrow('above 0');
    expect(() => tCdf(NaN, 3)).toThrow(RangeError);
  });
});

describe('tQuantile', () => {
  it.each([
    [0.975, 1, 12.706204736174705],
    [0.975, 2.5, 3.5746548420036834],
    [0.995, 16, 2.9207816224251],
    [0.9995, 4, 8.610301581379275],
    [0.975, 136.875, 1.9774473034043065],
    [0.975, 1e5, 1.9599877075346097],
    [0.975, 1e8, 1.9599640082627667],
  ])('should be accurate at %d with %d degrees of freedom', (p, nu, reference) => {
    expect(relativeError(tQuantile(p, nu), reference)).toBeLessThan(nu > 1e3 ? 1e-8 : 1e-12);
    expect(tQuantile(1 - p, nu)).toBeCloseTo(-reference, 7);
  });

  it('should undo the distribution function, agree with jstat and pass the middle', () => {
    for (const nu of [1, 3.3, 40]) {
      for (const p of [1e-9, 0.01, 0.4, 0.8]) {
        expect(relativeError(tCdf(tQuantile(p, nu), nu), p)).toBeLessThan(1e-11);
      }
      expect(relativeError(tQuantile(0.9, nu), jStat.studentt.inv(0.9, nu))).toBeLessThan(1e-7);
    }
    expect(tQuantile(0.5, 4)).toBe(0);
  });

  it('should refuse certainties and no degrees of freedom', () => {
    expect(() => tQuantile(1, 4)).toThrow('between 0 and 1');
    expect(() => tQuantile(0.9, -1)).toThrow('above 0');
  });
});

describe('chiSquaredQuantile', () => {
  it.each([
    [0.01, 42, 23.650094677826193],
    [0.05, 1, 0.003932140000019522],
    [0.95, 9, 16.91897760462045],
    [0.999, 2, 13.815510557964274],
  ])('should be accurate at %d with %d degrees of freedom', (p, nu, reference) => {
    expect(relativeError(chiSquaredQuantile(p, nu), reference)).toBeLessThan(2e-13);
    expect(chiSquaredQuantile(p, nu)).toBeCloseTo(jStat.chisquare.inv(p, nu), 7);
  });

  it('should refuse certainties and degrees of freedom without end', () => {
    expect(() => chiSquaredQuantile(0, 4)).toThrow('between 0 and 1');
    expect(() => chiSquaredQuantile(0.5, Infinity)).toThrow('finite');
  });
});

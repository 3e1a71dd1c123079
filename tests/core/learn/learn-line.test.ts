import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { learnValue } from '../../../src/core/learn/learn-line.js';
import { rangeCoverage } from '../../../src/core/learn/range-coverage.js';
import { createToleranceFactors } from '../../../src/core/learn/tolerance-factors.js';
import { exactToleranceFactor } from '../../../src/core/numbers/exact-tolerance-factor.js';
import { mean } from '../../../src/core/numbers/mean.js';
import { sampleStandardDeviation } from '../../../src/core/numbers/sample-standard-deviation.js';

const rule = {
  usual: 0.1,
  relativeUncertainty: 0.003,
  factor: createToleranceFactors(),
};

/** n values of mean 400 and standard deviation s. */
const boardsOf = (n: number, s: number): number[] => {
  const raw = Array.from({ length: n }, (_, at) => Math.sin(1 + 2 * at));
  const centre = mean(raw);
  const spread = sampleStandardDeviation(raw);
  return raw.map((x) => 400 + (s * (x - centre)) / spread);
};

describe('learnValue', () => {
  // Two-sided factors for 95 % at 95 %: computed, and as remembered from the tables of ISO 16269-6.
  it.each([
    [5, 5.077],
    [10, 3.393],
    [20, 2.76],
  ])('should put the limits of %i boards at %f standard deviations', (n, factor) => {
    const s = 8;
    const learned = learnValue(boardsOf(n, s), rule);
    expect(learned.by).toBe('interval');
    expect((learned.interval ?? 0) * 400).toBeCloseTo(factor * s, 2);
    expect(learned.tolerance).toBe(Math.ceil((1000 * factor * s) / 400 - 1e-6) / 1000);
    expect(learned.nominal).toBeCloseTo(400, 6);
  });

  it("should agree with the handbook's case", () => {
    // NIST/SEMATECH e-Handbook 7.2.6.3: n = 43, mean 97.07, s = 0.0268, share 0.90, confidence 0.99. The handbook
    // prints the approximate limits 97.0106 and 97.1294 (seen at second hand); the exact factor is 2.2228.
    const factor = exactToleranceFactor(43, 0.9, 0.99);
    const raw = boardsOf(43, 0.0268).map((x) => x - 400 + 97.07);
    const learned = learnValue(raw, { ...rule, factor: () => factor });
    expect((learned.interval ?? 0) * 97.07).toBeCloseTo(2.2228 * 0.0268, 5);
    expect(97.07 - (learned.interval ?? 0) * 97.07).toBeCloseTo(97.0106, 3);
  });

  it.each([
    [2, 36.519],
    [3, 9.789],
  ])('should not use the interval of %i boards, and say what it would be', (n, factor) => {
    const learned = learnValue(boardsOf(n, 8), rule);
    expect(learned).toMatchObject({ by: 'usual', tolerance: 0.1, boards: n });
    expect((learned.interval ?? 0) * learned.nominal).toBeCloseTo(factor * 8, 0);
  });

  it('should not be tighter because two boards happen to agree', () => {
    expect(learnValue([400, 400], rule)).toMatchObject({ tolerance: 0.1, interval: 0 });
  });

  it('should widen the usual tolerance to hold the few boards there are', () => {
    expect(learnValue([400, 500, 400], rule).tolerance).toBe(0.25);
  });

  it('should take a single board as it is', () => {
    expect(learnValue([388.46], rule)).toEqual({
      nominal: 388.5,
      tolerance: 0.1,
      boards: 1,
      by: 'usual',
      interval: null,
      isTooScattered: false,
    });
  });

  it('should give no limits tighter than 2 %, nor than measuring is', () => {
    expect(learnValue(boardsOf(10, 0.1), rule).tolerance).toBe(0.02);
    const coarse = { ...rule, relativeUncertainty: 0.03 };
    expect(learnValue(boardsOf(10, 0.1), coarse).tolerance).toBe(0.06);
  });

  it('should cap limits that mean nothing, and say so', () => {
    expect(learnValue([100, 400, 100, 400, 100, 400], rule)).toMatchObject({
      tolerance: 0.5,
      isTooScattered: true,
    });
  });

  it('should refuse no board and what no good board reads', () => {
    expect(() => learnValue([], rule)).toThrow('1 or more');
    expect(() => learnValue([400, 0], rule)).toThrow('above 0');
  });

  it('should scale with the values', () => {
    const value = fc.double({ min: 1, max: 1e6, noNaN: true });
    const quick = { ...rule, factor: () => 5.077 };
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 9 }), (values) => {
        const once = learnValue(values, quick);
        const kilo = learnValue(
          values.map((x) => 1000 * x),
          quick,
        );
        expect(kilo.nominal / once.nominal).toBeCloseTo(1000, 6);
        expect(Math.abs(kilo.tolerance - once.tolerance)).toBeLessThan(0.0011);
        expect(once.tolerance).toBeGreaterThanOrEqual(0.02);
        expect(once.tolerance).toBeLessThanOrEqual(0.5 + 1e-12);
      }),
      { seed: 431, numRuns: 200 },
    );
  });
});

describe('rangeCoverage', () => {
  it('should have the closed form of two boards', () => {
    // 2p - p² = 0.05, so p = 1 - √0.95.
    expect(rangeCoverage(2, 0.95)).toBeCloseTo(1 - Math.sqrt(0.95), 12);
  });

  it('should need 93 boards for 95 % at 95 %', () => {
    // Wilks (1941), the well-known two-sided sample size; from memory.
    expect(rangeCoverage(93, 0.95)).toBeGreaterThanOrEqual(0.95);
    expect(rangeCoverage(92, 0.95)).toBeLessThan(0.95);
  });

  it('should prove nothing by one board, and refuse none', () => {
    expect(rangeCoverage(1, 0.95)).toBe(0);
    expect(() => rangeCoverage(0, 0.95)).toThrow('one or more');
    expect(() => rangeCoverage(3, 1)).toThrow('confidence');
  });
});

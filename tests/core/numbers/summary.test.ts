import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { correlation } from '../../../src/core/numbers/correlation.js';
import { lagOneAutocorrelation } from '../../../src/core/numbers/lag-one-autocorrelation.js';
import { mean } from '../../../src/core/numbers/mean.js';
import { median } from '../../../src/core/numbers/median.js';
import { medianAbsoluteDeviation } from '../../../src/core/numbers/median-absolute-deviation.js';
import { modifiedZScores, outlierScore } from '../../../src/core/numbers/modified-z-scores.js';
import { sampleStandardDeviation } from '../../../src/core/numbers/sample-standard-deviation.js';

const seed = 20260131;
const sample = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), {
  minLength: 2,
  maxLength: 40,
});

describe.each([
  ['mean', mean, 1],
  ['sampleStandardDeviation', sampleStandardDeviation, 2],
  ['median', median, 1],
  ['medianAbsoluteDeviation', medianAbsoluteDeviation, 1],
  ['modifiedZScores', modifiedZScores, 1],
  ['lagOneAutocorrelation', lagOneAutocorrelation, 2],
] as const)('%s', (_name, compute, atLeast) => {
  it('should refuse a sample that is too short', () => {
    expect(() => compute(new Array<number>(atLeast - 1).fill(1))).toThrow(
      `needs ${atLeast} or more values`,
    );
  });

  it('should refuse values that are not finite, and name the place', () => {
    expect(() => compute([1, NaN, 3])).toThrow('value number 2 is not finite');
    expect(() => compute([1, 2, Infinity])).toThrow('value number 3 is not finite');
  });

  it('should leave its input alone', () => {
    const values = Object.freeze([3, 1, 2, 10, -4]);
    compute(values);
    expect(values).toEqual([3, 1, 2, 10, -4]);
  });
});

describe('mean', () => {
  it('should survive values whose sum overflows', () => {
    expect(mean([1.5e308, 1.5e308])).toBe(1.5e308);
  });

  it('should lie within the values and move with them', () => {
    fc.assert(
      fc.property(sample, fc.double({ min: -1e6, max: 1e6, noNaN: true }), (values, shift) => {
        const centre = mean(values);
        expect(centre).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(centre).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
        expect(mean(values.map((value) => value + shift))).toBeCloseTo(centre + shift, 6);
      }),
      { seed },
    );
  });
});

describe('sampleStandardDeviation', () => {
  it('should be zero for equal values and grow with scale', () => {
    expect(sampleStandardDeviation([0.1, 0.1, 0.1])).toBe(0);
    expect(sampleStandardDeviation([2, 4, 4, 4, 5, 5, 7, 9])).toBeCloseTo(Math.sqrt(32 / 7), 14);
    fc.assert(
      fc.property(sample, (values) => {
        const s = sampleStandardDeviation(values);
        expect(sampleStandardDeviation(values.map((value) => -8 * value))).toBeCloseTo(8 * s, 5);
      }),
      { seed },
    );
  });
});

describe('median and MAD', () => {
  it('should take the middle value, or the mean of the two', () => {
    expect(median([5])).toBe(5);
    expect(median([9, 1, 5])).toBe(5);
    expect(median([3, 1, 2, 10])).toBe(2.5);
    expect(median([10, 9, 2, 1, 100])).toBe(9);
  });

  it('should not move far when less than half the values are wild', () => {
    expect(median([1, 2, 3, 1e9, 1e9])).toBe(3);
    expect(medianAbsoluteDeviation([1, 1, 2, 2, 4, 6, 9])).toBe(1);
    expect(medianAbsoluteDeviation([10, 10, 10, 99])).toBe(0);
  });
});

describe('modifiedZScores', () => {
  it('should score zero where all values are equal', () => {
    expect(modifiedZScores([7, 7, 7])).toEqual([0, 0, 0]);
    expect(modifiedZScores([7])).toEqual([0]);
  });

  it('should stay finite where most are equal, and still find the one that is not', () => {
    const scores = modifiedZScores([388, 388, 388, 388, 388, 388, 388, 388, 700]);
    expect(scores.slice(0, 8)).toEqual(new Array(8).fill(0));
    // Mean absolute deviation 312/9: sqrt(2/pi) 9.
    expect(scores[8]).toBeCloseTo(9 * Math.sqrt(2 / Math.PI), 12);
    expect(scores[8]).toBeGreaterThan(outlierScore);
  });

  it('should be finite for every sample', () => {
    fc.assert(
      fc.property(sample, (values) => {
        expect(modifiedZScores(values).every(Number.isFinite)).toBe(true);
      }),
      { seed },
    );
  });
});

describe('lagOneAutocorrelation', () => {
  it('should be 0 for a constant, negative for a saw and positive for a ramp', () => {
    expect(lagOneAutocorrelation([3, 3, 3])).toBe(0);
    expect(lagOneAutocorrelation([1, 2, 3, 4, 5])).toBeCloseTo(0.4, 14);
    expect(lagOneAutocorrelation([1, -1, 1, -1])).toBeCloseTo(-0.75, 14);
  });
});

describe('correlation', () => {
  it('should be exactly 1 and -1 on lines', () => {
    expect(correlation([1, 2, 4], [3, 5, 9])).toBe(1);
    expect(correlation([1, 2, 4], [-3, -5, -9])).toBe(-1);
  });

  it('should refuse unequal lengths and a constant series', () => {
    expect(() => correlation([1, 2, 3], [1, 2])).toThrow('as many x as y');
    expect(() => correlation([1, 1], [1, 2])).toThrow('constant series');
  });
});

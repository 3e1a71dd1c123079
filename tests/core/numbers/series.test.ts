import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cusumStart, cusumStep } from '../../../src/core/numbers/cusum-step.js';
import { ewmaLimits } from '../../../src/core/numbers/ewma-limits.js';
import { ewmaStep } from '../../../src/core/numbers/ewma-step.js';
import { leastSquaresBreak } from '../../../src/core/numbers/least-squares-break.js';
import { pettittTest } from '../../../src/core/numbers/pettitt-test.js';

const seed = 20260131;
const value = fc.double({ min: -100, max: 100, noNaN: true });

describe('cusumStep', () => {
  it('should add up departures on either side and never fall under zero', () => {
    const up = cusumStep(cusumStart, 12, { target: 10, slack: 0.5 });
    expect(up).toEqual({ high: 1.5, low: 0 });
    expect(cusumStep(up, 7, { target: 10, slack: 0.5 })).toEqual({ high: 0, low: 2.5 });
  });

  it('should refuse what it cannot add', () => {
    expect(() => cusumStep(cusumStart, NaN, { target: 0, slack: 0 })).toThrow(RangeError);
    expect(() => cusumStep(cusumStart, 1, { target: 0, slack: -1 })).toThrow(RangeError);
  });
});

describe('ewmaStep and ewmaLimits', () => {
  it('should follow at once with a weight of 1, and lie between old and new', () => {
    expect(ewmaStep(3, 8, 1)).toBe(8);
    expect(ewmaStep(50, 52, 0.3)).toBeCloseTo(50.6, 12);
  });

  it('should have limits of the full spread at a weight of 1', () => {
    expect(ewmaLimits(10, 2, 1)).toEqual({ low: 4, high: 16 });
  });

  it.each([0, -1, 1.1, NaN])('should refuse a weight of %d', (weight) => {
    expect(() => ewmaStep(0, 1, weight)).toThrow('a weight');
    expect(() => ewmaLimits(0, 1, weight)).toThrow('a weight');
  });

  it('should refuse values that are not finite and negative spreads', () => {
    expect(() => ewmaStep(0, NaN, 0.5)).toThrow('finite');
    expect(() => ewmaLimits(0, -1, 0.5)).toThrow('0 or more');
  });
});

describe('leastSquaresBreak', () => {
  it('should find a step', () => {
    expect(leastSquaresBreak([1, 1, 1, 5, 5])).toEqual({
      before: 3,
      meanBefore: expect.closeTo(1, 12),
      meanAfter: expect.closeTo(5, 12),
      residual: expect.closeTo(0, 12),
      residualWithout: expect.closeTo(19.2, 12),
    });
  });

  it('should be the best of all splits, each tried by hand', () => {
    const squares = (part: readonly number[]) => {
      const centre = part.reduce((a, b) => a + b, 0) / part.length;
      return part.reduce((sum, x) => sum + (x - centre) ** 2, 0);
    };
    fc.assert(
      fc.property(fc.array(value, { minLength: 2, maxLength: 15 }), (values) => {
        const found = leastSquaresBreak(values);
        const tried = values
          .slice(1)
          .map((_, i) => squares(values.slice(0, i + 1)) + squares(values.slice(i + 1)));
        expect(found.residual).toBeCloseTo(Math.min(...tried), 6);
        expect(tried[found.before - 1]).toBeCloseTo(Math.min(...tried), 6);
      }),
      { seed },
    );
  });

  it('should split a constant series after its first value, saving nothing', () => {
    const found = leastSquaresBreak([4, 4, 4]);
    expect(found.before).toBe(1);
    expect(found.residual).toBe(found.residualWithout);
  });

  it('should refuse a single value', () => {
    expect(() => leastSquaresBreak([1])).toThrow('2 or more values');
  });
});

describe('pettittTest', () => {
  it('should be the largest of all sums over pairs, each tried by hand', () => {
    fc.assert(
      fc.property(fc.array(value, { minLength: 2, maxLength: 12 }), (values) => {
        const sums = values.slice(1).map((_, i) => {
          let u = 0;
          for (const a of values.slice(0, i + 1)) {
            for (const b of values.slice(i + 1)) u += Math.sign(a - b);
          }
          return Math.abs(u);
        });
        const found = pettittTest(values);
        expect(found.statistic).toBe(Math.max(...sums));
        if (found.statistic > 0) expect(sums[found.before - 1]).toBe(found.statistic);
      }),
      { seed },
    );
  });

  it('should not be led by one wild value', () => {
    expect(pettittTest([1, 2, 1, 2, 900, 1, 2, 1, 8, 9, 8, 9, 8, 9, 8, 9]).before).toBe(8);
  });

  it('should find nothing in a constant series, and refuse a single value', () => {
    expect(pettittTest([2, 2, 2])).toEqual({ before: 1, statistic: 0, pValue: 1 });
    expect(() => pettittTest([1])).toThrow('2 or more values');
  });
});

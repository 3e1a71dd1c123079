import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { binomialCoefficient } from '../../../src/core/numbers/binomial-coefficient.js';
import { fishersExactTest } from '../../../src/core/numbers/fishers-exact-test.js';
import { holmAdjust } from '../../../src/core/numbers/holm-adjust.js';
import { signFlipTest } from '../../../src/core/numbers/sign-flip-test.js';

const seed = 20260131;

describe('binomialCoefficient', () => {
  it('should be exact, also where doubles are not', () => {
    expect(binomialCoefficient(8, 4)).toBe(70n);
    expect(binomialCoefficient(0, 0)).toBe(1n);
    expect(binomialCoefficient(60, 30)).toBe(118264581564861424n);
    expect(binomialCoefficient(5, 6)).toBe(0n);
    expect(binomialCoefficient(5, -1)).toBe(0n);
  });

  it("should follow Pascal's rule", () => {
    for (let n = 1; n <= 40; n += 1) {
      for (let k = 0; k <= n; k += 1) {
        const above = binomialCoefficient(n - 1, k - 1) + binomialCoefficient(n - 1, k);
        expect(binomialCoefficient(n, k)).toBe(above);
      }
    }
  });

  it.each([
    [2.5, 1],
    [-1, 0],
    [1001, 3],
    [5, NaN],
  ])('should refuse %d over %d', (n, k) => {
    expect(() => binomialCoefficient(n, k)).toThrow('whole numbers up to 1000');
  });
});

describe('fishersExactTest', () => {
  it('should agree with the sum of the single chances of jstat', () => {
    let chance = 0;
    for (let hits = 3; hits <= 6; hits += 1) chance += jStat.hypgeom.pdf(hits, 20, 9, 6);
    const table = [
      [3, 6],
      [3, 8],
    ] as const;
    expect(fishersExactTest(table, 'greater')).toBeCloseTo(chance, 12);
  });

  const count = fc.integer({ min: 0, max: 9 });

  it('should have tails that share the table seen, and mirror when the rows swap', () => {
    fc.assert(
      fc.property(count, count, count, count, (a, b, c, d) => {
        const greater = fishersExactTest(
          [
            [a, b],
            [c, d],
          ],
          'greater',
        );
        const less = fishersExactTest(
          [
            [a, b],
            [c, d],
          ],
          'less',
        );
        const twoSided = fishersExactTest(
          [
            [a, b],
            [c, d],
          ],
          'two-sided',
        );
        expect(greater + less).toBeGreaterThanOrEqual(1);
        expect(
          fishersExactTest(
            [
              [c, d],
              [a, b],
            ],
            'less',
          ),
        ).toBe(greater);
        expect(
          fishersExactTest(
            [
              [a, c],
              [b, d],
            ],
            'greater',
          ),
        ).toBe(greater);
        expect(twoSided).toBeGreaterThanOrEqual(Math.min(greater, less));
        expect(twoSided).toBeLessThanOrEqual(1);
      }),
      { seed },
    );
  });

  it('should say nothing against an empty table or one without contrast', () => {
    expect(
      fishersExactTest(
        [
          [0, 0],
          [0, 0],
        ],
        'two-sided',
      ),
    ).toBe(1);
    expect(
      fishersExactTest(
        [
          [5, 0],
          [5, 0],
        ],
        'greater',
      ),
    ).toBe(1);
  });

  it('should refuse counts that are not', () => {
    expect(() =>
      fishersExactTest(
        [
          [1.5, 0],
          [1, 1],
        ],
        'less',
      ),
    ).toThrow('whole numbers');
    expect(() =>
      fishersExactTest(
        [
          [-1, 0],
          [1, 1],
        ],
        'less',
      ),
    ).toThrow('whole numbers');
    expect(() =>
      fishersExactTest(
        [
          [600, 0],
          [600, 1],
        ],
        'less',
      ),
    ).toThrow('up to 1000');
  });
});

describe('signFlipTest', () => {
  it('should say nothing against differences that are all zero', () => {
    expect(signFlipTest([0, 0], 'two-sided')).toEqual({ extreme: 1, arrangements: 1, pValue: 1 });
  });

  it('should not change its p-value for a zero among the differences', () => {
    const without = signFlipTest([1, 2, 3, -1], 'greater').pValue;
    expect(signFlipTest([0, 1, 2, 0, 3, -1], 'greater').pValue).toBe(without);
  });

  it('should take sums that differ by rounding alone as equal', () => {
    // 0.1 + 0.2 is not 0.3: eight arrangements, two of them with a sum of +/-0.6, and ties at 0.
    expect(signFlipTest([0.1, 0.2, 0.3], 'two-sided').extreme).toBe(2);
    expect(signFlipTest([0.1, 0.2, -0.3], 'two-sided').pValue).toBe(1);
    expect(signFlipTest([0.1, 0.2, -0.3], 'greater').extreme).toBe(5);
  });

  it('should mirror with the signs, and count the observed arrangement', () => {
    const difference = fc.integer({ min: -20, max: 20 });
    fc.assert(
      fc.property(fc.array(difference, { minLength: 1, maxLength: 9 }), (differences) => {
        const greater = signFlipTest(differences, 'greater');
        const mirrored = signFlipTest(
          differences.map((d) => -d),
          'less',
        );
        expect(mirrored).toEqual(greater);
        expect(greater.extreme).toBeGreaterThanOrEqual(1);
      }),
      { seed },
    );
  });

  it('should refuse more than it can try', () => {
    expect(() => signFlipTest(new Array(21).fill(1), 'greater')).toThrow('at most 20');
    expect(() => signFlipTest([], 'greater')).toThrow('1 or more values');
    expect(signFlipTest(new Array(20).fill(1), 'greater').pValue).toBe(2 ** -20);
  });
});

describe('holmAdjust', () => {
  it('should step down, in the order given', () => {
    // By hand: 0.01 x 3, then 0.03 x 2, then 0.04 x 1 raised to the 0.06 before it.
    expect(holmAdjust([0.01, 0.04, 0.03])).toEqual([0.03, 0.06, 0.06]);
    expect(holmAdjust([0.4, 0.9])).toEqual([0.8, 0.9]);
    expect(holmAdjust([0.6, 0.9])).toEqual([1, 1]);
    expect(holmAdjust([])).toEqual([]);
  });

  it('should lie between the raw value and Bonferroni, and keep the order', () => {
    const p = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(p, { minLength: 1, maxLength: 8 }), (raw) => {
        const adjusted = holmAdjust(raw);
        for (const [i, value] of adjusted.entries()) {
          const own = raw[i] ?? NaN;
          expect(value).toBeGreaterThanOrEqual(own);
          expect(value).toBeLessThanOrEqual(Math.min(1, own * raw.length));
        }
      }),
      { seed },
    );
  });

  it('should refuse what is not a p-value', () => {
    expect(() => holmAdjust([0.5, 1.2])).toThrow('0 to 1');
    expect(() => holmAdjust([NaN])).toThrow('0 to 1');
  });
});

// Fisher, The Design of Experiments (1935): the lady tasting tea (ch. 2) and Darwin's maize (section 21).
import { describe, expect, it } from 'vitest';
import { fishersExactTest } from '../../src/core/numbers/fishers-exact-test.js';
import { mean } from '../../src/core/numbers/mean.js';
import { sampleStandardDeviation } from '../../src/core/numbers/sample-standard-deviation.js';
import { signFlipTest } from '../../src/core/numbers/sign-flip-test.js';
import { tCdf } from '../../src/core/numbers/t-cdf.js';

describe("Fisher's exact test", () => {
  it('all four cups right: 1/70 (ch. 2, from memory, recomputed)', () => {
    expect(
      fishersExactTest(
        [
          [4, 0],
          [0, 4],
        ],
        'greater',
      ),
    ).toBe(1 / 70);
  });

  it('three right: 17/70, printed 0.2429 (read in the R documentation of fisher.test)', () => {
    const p = fishersExactTest(
      [
        [3, 1],
        [1, 3],
      ],
      'greater',
    );
    expect(p).toBe(17 / 70);
    expect(p.toFixed(4)).toBe('0.2429');
    expect(
      fishersExactTest(
        [
          [3, 1],
          [1, 3],
        ],
        'two-sided',
      ),
    ).toBe(34 / 70);
  });

  it('twin convictions (input read in the R documentation; output from memory, recomputed)', () => {
    const less = fishersExactTest(
      [
        [2, 15],
        [10, 3],
      ],
      'less',
    );
    expect(less).toBeCloseTo(0.000465181, 9);
    expect(less.toFixed(7)).toBe('0.0004652');
    const twoSided = fishersExactTest(
      [
        [2, 15],
        [10, 3],
      ],
      'two-sided',
    );
    expect(twoSided).toBeCloseTo(0.000536724, 9);
    expect(twoSided.toFixed(7)).toBe('0.0005367');
  });

  it.each([
    [3, 20],
    [4, 70],
    [5, 252],
    [6, 924],
  ])('%d presses and as many releases told apart perfectly: 1/%d (calculated)', (k, ways) => {
    expect(
      fishersExactTest(
        [
          [k, 0],
          [0, k],
        ],
        'greater',
      ),
    ).toBe(1 / ways);
  });
});

describe("sign flips: Darwin's maize, section 21", () => {
  // Differences in height, crossed less self-fertilised, in eighths of an inch.
  const maize = [49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48];

  it('863 of 32 768 arrangements reach the sum of 314 (seen at second hand, recomputed)', () => {
    expect(maize.reduce((sum, difference) => sum + difference, 0)).toBe(314);
    const oneSided = signFlipTest(maize, 'greater');
    expect(oneSided).toEqual({ extreme: 863, arrangements: 32768, pValue: 863 / 32768 });
    expect(oneSided.pValue).toBeCloseTo(0.02633667, 8);
  });

  it('two-sided 0.052 673 34 (seen at second hand, recomputed)', () => {
    const twoSided = signFlipTest(maize, 'two-sided');
    expect(twoSided.extreme).toBe(1726);
    expect(twoSided.pValue).toBeCloseTo(0.05267334, 8);
  });

  it('stands beside the paired t of 2.148, p = 0.0497 (calculated; 2.148 from memory)', () => {
    const t = mean(maize) / (sampleStandardDeviation(maize) / Math.sqrt(15));
    expect(t).toBeCloseTo(2.147987, 6);
    expect(2 * tCdf(-t, 14)).toBeCloseTo(0.049703, 6);
  });

  it('1, 2, 3 gives 2/8 (seen at second hand)', () => {
    expect(signFlipTest([1, 2, 3], 'two-sided').pValue).toBe(2 / 8);
  });
});

// NIST/SEMATECH e-Handbook of Statistical Methods. Figures read in several independent public test suites
// that quote the pages (seen at second hand) and recomputed, unless a test says otherwise.
import { describe, expect, it } from 'vitest';
import { chiSquaredQuantile } from '../../src/core/numbers/chi-squared-quantile.js';
import { clopperPearsonInterval } from '../../src/core/numbers/clopper-pearson-interval.js';
import { cusumStart, cusumStep } from '../../src/core/numbers/cusum-step.js';
import { ewmaLimits } from '../../src/core/numbers/ewma-limits.js';
import { ewmaStep } from '../../src/core/numbers/ewma-step.js';
import { exactToleranceFactor } from '../../src/core/numbers/exact-tolerance-factor.js';
import { howeToleranceFactor } from '../../src/core/numbers/howe-tolerance-factor.js';
import { mean } from '../../src/core/numbers/mean.js';
import { median } from '../../src/core/numbers/median.js';
import { medianAbsoluteDeviation } from '../../src/core/numbers/median-absolute-deviation.js';
import { modifiedZScores, outlierScore } from '../../src/core/numbers/modified-z-scores.js';
import { oneSidedToleranceFactor } from '../../src/core/numbers/one-sided-tolerance-factor.js';
import { sampleStandardDeviation } from '../../src/core/numbers/sample-standard-deviation.js';
import { tCdf } from '../../src/core/numbers/t-cdf.js';
import { tQuantile } from '../../src/core/numbers/t-quantile.js';
import { wilsonInterval } from '../../src/core/numbers/wilson-interval.js';
import cusum from '../fixtures/published/cusum.json' with { type: 'json' };
import ewma from '../fixtures/published/ewma.json' with { type: 'json' };

it('6.3.2.3, CUSUM: every sum, and the first alarm at group 14', () => {
  let state = cusumStart;
  const alarms: number[] = [];
  for (const [i, value] of cusum.values.entries()) {
    state = cusumStep(state, value, cusum);
    expect(state.high).toBeCloseTo(cusum.high[i] ?? NaN, 9);
    expect(state.low).toBeCloseTo(cusum.low[i] ?? NaN, 9);
    if (state.high > cusum.decision || state.low > cusum.decision) alarms.push(i + 1);
  }
  expect(alarms).toEqual([14, 15, 16, 17, 18, 19, 20]);
});

describe('6.3.2.4, EWMA', () => {
  it('gives every average', () => {
    let average = ewma.start;
    for (const [i, value] of ewma.values.entries()) {
      average = ewmaStep(average, value, ewma.weight);
      expect(average).toBeCloseTo(ewma.exact[i] ?? NaN, 4);
      expect(average.toFixed(2)).toBe(ewma.printed[i]?.toFixed(2));
    }
    expect(ewma.exact).toHaveLength(20);
  });

  it('gives the limits, which the handbook prints with a rounded root', () => {
    const { low, high } = ewmaLimits(ewma.start, ewma.standardDeviation, ewma.weight);
    expect(high).toBeCloseTo(52.588432, 6);
    expect(low).toBeCloseTo(47.411568, 6);
    expect(Math.abs(high - 52.5884)).toBeLessThan(0.0002);
    expect(Math.abs(low - 47.4115)).toBeLessThan(0.0002);
  });
});

it('6.3.2.2, individuals: the centre line', () => {
  expect(mean([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])).toBeCloseTo(50.81, 12);
});

describe('7.2.6.3, tolerance intervals', () => {
  it('gives the approximate two-sided factor for 43, 0.90 and 0.99', () => {
    expect(chiSquaredQuantile(0.01, 42)).toBeCloseTo(23.650095, 6);
    const k = howeToleranceFactor(43, 0.9, 0.99);
    expect(k).toBeCloseTo(2.217316, 6);
    expect(k.toFixed(3)).toBe('2.217');
    expect(97.07 - k * 0.0268).toBeCloseTo(97.010576, 6);
    expect(97.07 + k * 0.0268).toBeCloseTo(97.129424, 6);
  });

  it('gives the exact two-sided factor of the same case (calculated)', () => {
    expect(exactToleranceFactor(43, 0.9, 0.99)).toBeCloseTo(2.2228, 4);
  });

  it('gives the exact one-sided factor by the non-central t (calculated; printed value from memory)', () => {
    const k = oneSidedToleranceFactor(43, 0.9, 0.99);
    expect(k).toBeCloseTo(1.873954, 6);
    expect(k.toFixed(4)).toBe('1.8740');
    // The handbook's last line takes s as 2.68 instead of 0.0268.
    expect((97.07 + k * 0.0268).toFixed(3)).toBe('97.120');
  });

  it.each([
    [2, 36.519, 38.281],
    [3, 9.789, 9.993],
    [5, 5.077, 5.094],
    [10, 3.393, 3.382],
    [20, 2.76, 2.752],
  ])(
    'gives the factors for %d boards (calculated; exact row as ISO 16269-6, from memory)',
    (n, exact, howe) => {
      expect(exactToleranceFactor(n, 0.95, 0.95)).toBeCloseTo(exact, 3);
      expect(howeToleranceFactor(n, 0.95, 0.95)).toBeCloseTo(howe, 3);
    },
  );
});

describe('1.3.5.17, outliers (Iglewicz and Hoaglin; data of Tietjen and Moore)', () => {
  const uranium = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];

  it('gives the median and the MAD (calculated)', () => {
    expect(median(uranium)).toBeCloseTo(201.37, 10);
    expect(medianAbsoluteDeviation(uranium)).toBeCloseTo(0.995, 10);
  });

  it('scores the last value, and no other, as an outlier (calculated)', () => {
    const expected = [-1.3965, -1.2473, -0.7999, -0.3728, 0.3728, 0.3932, 0.5491, 29.9627];
    const scores = modifiedZScores(uranium);
    expect(scores).toHaveLength(8);
    for (const [i, score] of scores.entries()) expect(score).toBeCloseTo(expected[i] ?? NaN, 4);
    expect(scores.filter((score) => Math.abs(score) > outlierScore)).toHaveLength(1);
  });

  it('agrees with the Grubbs test of the same data through mean, s and t quantile', () => {
    const n = uranium.length;
    const grubbs = (245.57 - mean(uranium)) / sampleStandardDeviation(uranium);
    expect(grubbs).toBeCloseTo(2.468765, 6);
    const t = tQuantile(1 - 0.05 / n, n - 2);
    const critical = ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
    expect(critical).toBeCloseTo(2.031652, 6);
    expect(grubbs).toBeLessThan((n - 1) / Math.sqrt(n));
  });
});

it('1.3.5.3, two-sample t of AUTO83B: the critical value, far inside the statistic', () => {
  expect(tQuantile(0.975, 326)).toBeCloseTo(1.967268, 6);
  expect(tCdf(-12.62059, 326)).toBeLessThan(1e-25);
});

describe('7.2.4, proportion defective: 4 of 20', () => {
  it.each([
    [0.9, 0.071354, 0.401028],
    [0.95, 0.057334, 0.436614],
  ])(
    '7.2.4.2, exact at %d (problem read on the page; result from memory, recomputed)',
    (confidence, low, high) => {
      const interval = clopperPearsonInterval(4, 20, confidence);
      expect(interval.low).toBeCloseTo(low, 6);
      expect(interval.high).toBeCloseTo(high, 6);
    },
  );

  it.each([
    [0.9, 0.093118, 0.378377],
    [0.95, 0.080658, 0.416017],
  ])(
    '7.2.4.1, Wilson at %d (formula read on the page; values calculated)',
    (confidence, low, high) => {
      const interval = wilsonInterval(4, 20, confidence);
      expect(interval.low).toBeCloseTo(low, 6);
      expect(interval.high).toBeCloseTo(high, 6);
    },
  );

  it('puts 0 of 10 at most at 0.2589 with 95 % one-sided confidence (calculated)', () => {
    const { low, high } = clopperPearsonInterval(0, 10, 0.9);
    expect(low).toBe(0);
    expect(high).toBeCloseTo(0.258866, 6);
  });
});

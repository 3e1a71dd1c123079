// EA-4/02 M:2022. Uncertainties and factors read in a public test file that quotes the budget (seen at second
// hand), half-widths and formula from memory; all arithmetic redone.
import { describe, expect, it } from 'vitest';
import { combinedUncertainty } from '../../src/core/measure/combined-uncertainty.js';
import type { Contribution } from '../../src/core/measure/contribution.js';
import { coverageFactor } from '../../src/core/measure/coverage-factor.js';
import { readingUncertainty } from '../../src/core/measure/reading-uncertainty.js';
import { rectangularUncertainty } from '../../src/core/measure/rectangular-uncertainty.js';
import { trapezoidCoverageFactor } from '../../src/core/measure/trapezoid-coverage-factor.js';
import { tQuantile } from '../../src/core/numbers/t-quantile.js';

const row = (
  distribution: Contribution['distribution'],
  standardUncertainty: number,
  sensitivity = 1,
): Contribution => ({
  source: 'input',
  distribution,
  standardUncertainty,
  sensitivity,
  degreesOfFreedom: Infinity,
});

describe('EA-4/02 S9: a hand-held multimeter at 100 V DC', () => {
  const budget = [
    row('normal', 0.001, -1),
    row('rectangular', rectangularUncertainty(0.05)),
    row('rectangular', rectangularUncertainty(0.011), -1),
  ];

  it('gives the combined uncertainty', () => {
    expect(combinedUncertainty(budget)).toBeCloseTo(0.029575, 6);
    expect(combinedUncertainty(budget).toFixed(3)).toBe('0.030');
  });

  it('takes the factor of one dominant rectangle', () => {
    expect(coverageFactor(budget)).toBeCloseTo(1.645448, 6);
    expect(coverageFactor(budget).toFixed(2)).toBe('1.65');
  });

  it('gives the expanded uncertainty', () => {
    const expanded = coverageFactor(budget) * combinedUncertainty(budget);
    expect(expanded).toBeCloseTo(0.04866, 5);
    expect(expanded.toFixed(2)).toBe('0.05');
  });
});

describe('EA-4/02 S10: two dominant rectangles', () => {
  it('gives the trapezoid factor for half-widths of 50 and 25', () => {
    expect(trapezoidCoverageFactor(50, 25, 0.95)).toBeCloseTo(1.8339, 4);
    expect(trapezoidCoverageFactor(50, 25, 0.95).toFixed(2)).toBe('1.83');
  });

  it('is chosen for a budget that two rectangles dominate', () => {
    const budget = [
      row('rectangular', rectangularUncertainty(50)),
      row('rectangular', rectangularUncertainty(25)),
      row('normal', 2),
    ];
    expect(coverageFactor(budget)).toBeCloseTo(1.8339, 4);
  });
});

describe('a meter reading in the units of this program (own figures, recomputed)', () => {
  const reading = readingUncertainty({
    value: 0.512,
    resolution: 0.001,
    accuracy: { percent: 0.5, counts: 3 },
    repeatability: null,
  });

  it('is 0.512 V with 3.2230 mV', () => {
    expect(reading.standardUncertainty * 1e3).toBeCloseTo(3.223, 4);
  });

  it('has 1.649 as the exact factor of its two rectangles, and 1.645 by the rule of S9', () => {
    expect(trapezoidCoverageFactor(5.56, 0.5, 0.95)).toBeCloseTo(1.649, 3);
    expect(reading.coverageFactor).toBeCloseTo(1.645448, 6);
  });
});

describe('EA-4/02 Appendix E, coverage factors for 95.45 % (memory, recomputed)', () => {
  it.each([
    [1, '13.97'],
    [2, '4.53'],
    [3, '3.31'],
    [4, '2.87'],
    [5, '2.65'],
    [6, '2.52'],
    [7, '2.43'],
    [8, '2.37'],
    [10, '2.28'],
    [20, '2.13'],
    [50, '2.05'],
    [Infinity, '2.00'],
  ])('%d degrees of freedom: %s', (degreesOfFreedom, printed) => {
    expect(tQuantile((1 + 0.9545) / 2, degreesOfFreedom).toFixed(2)).toBe(printed);
  });

  it.each([
    [2, 4.3027],
    [4, 2.7764],
    [9, 2.2622],
    [14, 2.1448],
    [29, 2.0452],
  ])('95 %% with %d degrees of freedom: %d (calculated)', (degreesOfFreedom, exact) => {
    expect(tQuantile(0.975, degreesOfFreedom)).toBeCloseTo(exact, 4);
  });
});

// GUM, JCGM 100:2008. Sections 4, F and G: figures from memory, arithmetic redone. H.1 and H.2: figures read
// in public test suites that quote the document (seen at second hand), arithmetic redone.
import { describe, expect, it } from 'vitest';
import { combinedCovariance } from '../../src/core/measure/combined-covariance.js';
import { combinedUncertainty } from '../../src/core/measure/combined-uncertainty.js';
import { type Contribution, contributed } from '../../src/core/measure/contribution.js';
import { coverageFactor } from '../../src/core/measure/coverage-factor.js';
import { effectiveDegreesOfFreedom } from '../../src/core/measure/effective-degrees-of-freedom.js';
import { rectangularUncertainty } from '../../src/core/measure/rectangular-uncertainty.js';
import { resolutionUncertainty } from '../../src/core/measure/resolution-uncertainty.js';
import { correlation } from '../../src/core/numbers/correlation.js';
import { mean } from '../../src/core/numbers/mean.js';
import { sampleStandardDeviation } from '../../src/core/numbers/sample-standard-deviation.js';
import { tQuantile } from '../../src/core/numbers/t-quantile.js';

const row = (
  standardUncertainty: number,
  degreesOfFreedom = Infinity,
  sensitivity = 1,
): Contribution => ({
  source: 'input',
  distribution: 'normal',
  standardUncertainty,
  sensitivity,
  degreesOfFreedom,
});

describe('GUM 4.3.7 and 5.1.5 (memory, recomputed)', () => {
  it('takes the voltmeter statement as a rectangle', () => {
    const u = rectangularUncertainty(15e-6);
    expect(u * 1e6).toBeCloseTo(8.66025, 5);
    expect(u ** 2 * 1e12).toBeCloseTo(75, 9);
    expect((u * 1e6).toFixed(1)).toBe('8.7');
  });

  it('combines it with a type A part of 12 uV', () => {
    const u = combinedUncertainty([row(12e-6), row(rectangularUncertainty(14.999994e-6))]);
    expect(u * 1e6).toBeCloseTo(14.7986, 4);
    expect((u * 1e6).toFixed(0)).toBe('15');
    expect(((u / 0.928571) * 1e6).toFixed(0)).toBe('16');
  });

  it('takes the bounds of a copper expansion coefficient as a rectangle', () => {
    const u = rectangularUncertainty(0.4e-6);
    expect(u * 1e6).toBeCloseTo(0.23094, 5);
    expect((u * 1e6).toFixed(2)).toBe('0.23');
  });
});

it('GUM F.2.2.1 (memory, recomputed): a last digit leaves 0.29 of a step', () => {
  expect(resolutionUncertainty(1)).toBeCloseTo(0.288675, 6);
  expect(resolutionUncertainty(1).toFixed(2)).toBe('0.29');
});

describe('GUM G.4.1, Welch-Satterthwaite (memory, recomputed)', () => {
  const budget = [row(0.25, 9), row(0.57, 4), row(0.82, 14)];

  it('gives the combined uncertainty and 19 effective degrees of freedom', () => {
    expect(combinedUncertainty(budget)).toBeCloseTo(1.029466, 6);
    expect(combinedUncertainty(budget).toFixed(2)).toBe('1.03');
    expect(effectiveDegreesOfFreedom(budget)).toBeCloseTo(18.998742, 6);
    expect(effectiveDegreesOfFreedom(budget).toFixed(1)).toBe('19.0');
  });

  it('gives the coverage factor and the expanded uncertainty at 95 %', () => {
    expect(tQuantile(0.975, 19)).toBeCloseTo(2.093024, 6);
    expect(tQuantile(0.975, 19).toFixed(2)).toBe('2.09');
    expect(coverageFactor(budget).toFixed(2)).toBe('2.09');
    const expanded = coverageFactor(budget) * combinedUncertainty(budget);
    // The source truncates to 19 degrees of freedom: 2.154697; with 18.9987 it is 2.1547 too.
    expect(expanded).toBeCloseTo(2.154697, 4);
    expect(expanded.toFixed(1)).toBe('2.2');
  });

  it('gives 40 for four equal parts of 10 (seen at second hand)', () => {
    expect(effectiveDegreesOfFreedom([1, 1, 1, 1].map((u) => row(u, 10)))).toBeCloseTo(40, 12);
  });

  it('gives infinity, and the normal factor, where every part is known exactly (by rule)', () => {
    const exact = [row(1), row(2), row(3)];
    expect(effectiveDegreesOfFreedom(exact)).toBe(Infinity);
    expect(coverageFactor(exact)).toBeCloseTo(1.959964, 6);
  });
});

describe('GUM H.1, end-gauge calibration (seen at second hand, recomputed)', () => {
  // In nm: the standard, the comparator, two terms with no first-order effect, and the two cross terms
  // l_S theta u(delta alpha) and l_S alpha u(delta theta).
  const length = 50_000_623;
  const budget = [
    row(25, 18),
    row(9.7, 25.6),
    row(1.2e-6, Infinity, 0),
    row(0.41, Infinity, 0),
    row(0.58e-6, 50, -length * -0.1),
    row(0.029, 2, -length * 11.5e-6),
  ];

  it('gives the published contributions', () => {
    const parts = budget.map(contributed);
    expect(parts[4]).toBeCloseTo(2.9, 3);
    expect(parts[5]).toBeCloseTo(16.6752, 3);
  });

  it('gives the combined uncertainty and effective degrees of freedom', () => {
    expect(combinedUncertainty(budget)).toBeCloseTo(31.7106, 3);
    expect(combinedUncertainty(budget).toFixed(0)).toBe('32');
    // The source carries rounded intermediates: 16.7, truncated to 16.
    expect(Math.abs(effectiveDegreesOfFreedom(budget) - 16.7)).toBeLessThan(0.2);
    expect(effectiveDegreesOfFreedom(budget)).toBeCloseTo(16.656, 2);
  });

  it('gives the expanded uncertainty at 99 %', () => {
    const k = tQuantile(0.995, 16);
    expect(k).toBeCloseTo(2.920782, 6);
    expect(k * combinedUncertainty(budget)).toBeCloseTo(92.62, 2);
    expect((k * combinedUncertainty(budget)).toFixed(0)).toBe('93');
  });
});

describe('GUM H.2, resistance and reactance from correlated inputs (seen at second hand, recomputed)', () => {
  const volts = [5.007, 4.994, 5.005, 4.99, 4.999];
  const amperes = [19.663, 19.639, 19.64, 19.685, 19.678].map((value) => value * 1e-3);
  const radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
  const inputs = [volts, amperes, radians];
  const ofTheMean = (values: readonly number[]) =>
    sampleStandardDeviation(values) / Math.sqrt(values.length);
  const matrix = inputs.map((one) => inputs.map((other) => correlation(one, other)));

  const v = mean(volts);
  const i = mean(amperes);
  const phi = mean(radians);
  const sensitivities = {
    R: [Math.cos(phi) / i, (-v * Math.cos(phi)) / i ** 2, (-v * Math.sin(phi)) / i],
    X: [Math.sin(phi) / i, (-v * Math.sin(phi)) / i ** 2, (v * Math.cos(phi)) / i],
    Z: [1 / i, -v / i ** 2, 0],
  };
  const budget = (name: keyof typeof sensitivities) =>
    inputs.map((values, k) => row(ofTheMean(values), 4, sensitivities[name][k] ?? 0));
  const outputCorrelation = (a: keyof typeof sensitivities, b: keyof typeof sensitivities) =>
    combinedCovariance(budget(a), budget(b), matrix) /
    combinedUncertainty(budget(a), matrix) /
    combinedUncertainty(budget(b), matrix);

  it('gives the means and their standard deviations', () => {
    expect([v, i * 1e3, phi].map((value) => value.toFixed(5))).toEqual([
      '4.99900',
      '19.66100',
      '1.04446',
    ]);
    expect(ofTheMean(volts) * 1e3).toBeCloseTo(3.209361, 6);
    expect(ofTheMean(amperes) * 1e6).toBeCloseTo(9.471008, 6);
    expect(ofTheMean(radians) * 1e3).toBeCloseTo(0.752064, 6);
  });

  it('gives the correlations of the inputs', () => {
    expect(matrix[0]?.[1]).toBeCloseTo(-0.355311, 6);
    expect(matrix[0]?.[2]).toBeCloseTo(0.857624, 6);
    expect(matrix[1]?.[2]).toBeCloseTo(-0.645111, 6);
  });

  it.each([
    ['R', (v / i) * Math.cos(phi), 127.73217, 0.071071, 0.071],
    ['X', (v / i) * Math.sin(phi), 219.846512, 0.295582, 0.295],
    ['Z', v / i, 254.259702, 0.236336, 0.236],
  ] as const)('gives %s and its uncertainty in ohm', (name, value, published, exact, printed) => {
    expect(value).toBeCloseTo(published, 6);
    const u = combinedUncertainty(budget(name), matrix);
    expect(u).toBeCloseTo(exact, 6);
    expect(Math.abs(u - printed)).toBeLessThan(0.001);
  });

  it('gives the correlations of the results', () => {
    expect(outputCorrelation('R', 'X')).toBeCloseTo(-0.58843, 6);
    expect(outputCorrelation('R', 'Z')).toBeCloseTo(-0.485259, 6);
    expect(outputCorrelation('X', 'Z')).toBeCloseTo(0.992512, 6);
  });
});

it('JCGM 101:2008, 9.2.2, Table 2 (seen at second hand): four normal parts of 1 give 2.00 and 3.92', () => {
  const budget = [row(1), row(1), row(1), row(1)];
  expect(combinedUncertainty(budget).toFixed(2)).toBe('2.00');
  expect((coverageFactor(budget) * combinedUncertainty(budget)).toFixed(2)).toBe('3.92');
});

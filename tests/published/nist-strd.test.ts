// NIST StRD, univariate summary statistics. Certified values read in two public test suites that quote them
// (seen at second hand), recomputed in exact fractions from the data.
import { describe, expect, it } from 'vitest';
import { lagOneAutocorrelation } from '../../src/core/numbers/lag-one-autocorrelation.js';
import { mean } from '../../src/core/numbers/mean.js';
import { sampleStandardDeviation } from '../../src/core/numbers/sample-standard-deviation.js';
import lew from '../fixtures/published/strd-lew.json' with { type: 'json' };
import lottery from '../fixtures/published/strd-lottery.json' with { type: 'json' };
import mavro from '../fixtures/published/strd-mavro.json' with { type: 'json' };
import michelso from '../fixtures/published/strd-michelso.json' with { type: 'json' };
import { piDigits } from './pi-digits.js';

const alternating = (first: number, low: number, high: number): number[] => [
  first,
  ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high)),
];

// The set is said to be the first 5000 digits of pi. As published, and as certified, its 957th value is 3;
// the digit of pi there is 8 (compared with the set in the GNU Scientific Library's tests).
const publishedPiDigits = piDigits(5000).with(956, 3);

// The last column is the relative accuracy that doubles allow: .1, .2 and .3 are not exact at 10^6 and 10^7.
const sets = [
  ['Lew', 200, lew.values, lew.mean, lew.standardDeviation, lew.lagOneAutocorrelation, 1e-13],
  [
    'Lottery',
    218,
    lottery.values,
    lottery.mean,
    lottery.standardDeviation,
    lottery.lagOneAutocorrelation,
    1e-13,
  ],
  [
    'Mavro',
    50,
    mavro.values,
    mavro.mean,
    mavro.standardDeviation,
    mavro.lagOneAutocorrelation,
    1e-12,
  ],
  [
    'Michelso',
    100,
    michelso.values,
    michelso.mean,
    michelso.standardDeviation,
    michelso.lagOneAutocorrelation,
    1e-12,
  ],
  ['PiDigits', 5000, publishedPiDigits, 4.5348, 2.86733906028871, -0.00355099287237972, 1e-12],
  ['NumAcc1', 3, [10000001, 10000003, 10000002], 10000002, 1, -0.5, 1e-15],
  ['NumAcc2', 1001, alternating(1.2, 1.1, 1.3), 1.2, 0.1, -0.999, 1e-13],
  ['NumAcc3', 1001, alternating(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, -0.999, 1e-9],
  ['NumAcc4', 1001, alternating(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, -0.999, 1e-7],
] as const;

it('NIST StRD PiDigits differs from pi in its 957th value alone', () => {
  expect(piDigits(5000)[956]).toBe(8);
  expect(piDigits(20).join('')).toBe('31415926535897932384');
});

const relative = (value: number, certified: number): number => Math.abs(value / certified - 1);

describe.each(sets)('NIST StRD %s', (_name, n, values, centre, spread, lagOne, accuracy) => {
  it('has the published number of values', () => {
    expect(values).toHaveLength(n);
  });

  it('gives the certified mean', () => {
    expect(relative(mean(values), centre)).toBeLessThanOrEqual(1e-14);
  });

  it('gives the certified standard deviation', () => {
    expect(relative(sampleStandardDeviation(values), spread)).toBeLessThanOrEqual(accuracy);
  });

  it('gives the certified lag-1 autocorrelation', () => {
    expect(relative(lagOneAutocorrelation(values), lagOne)).toBeLessThanOrEqual(
      Math.max(accuracy, 1e-12),
    );
  });
});

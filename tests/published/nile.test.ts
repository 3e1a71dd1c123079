// Annual flow of the Nile, 1871 to 1970: R datasets::Nile, read in several public sources.
import { expect, it } from 'vitest';
import { leastSquaresBreak } from '../../src/core/numbers/least-squares-break.js';
import { mean } from '../../src/core/numbers/mean.js';
import { pettittTest } from '../../src/core/numbers/pettitt-test.js';
import { sampleStandardDeviation } from '../../src/core/numbers/sample-standard-deviation.js';
import nile from '../fixtures/published/nile.json' with { type: 'json' };

it('the series is the published one: sum, mean and s (calculated)', () => {
  expect(nile.values).toHaveLength(100);
  expect(nile.values.reduce((sum, flow) => sum + flow, 0)).toBe(91935);
  expect(mean(nile.values)).toBeCloseTo(919.35, 10);
  expect(sampleStandardDeviation(nile.values)).toBeCloseTo(169.227501, 6);
});

it('breaks after observation 28, the year 1898 (Cobb, 1978, and strucchange, as quoted; recomputed)', () => {
  const found = leastSquaresBreak(nile.values);
  expect(found.before).toBe(28);
  expect(nile.firstYear + found.before - 1).toBe(1898);
});

it('has the means and residuals on either side (calculated)', () => {
  const found = leastSquaresBreak(nile.values);
  expect(found.meanBefore).toBeCloseTo(1097.75, 9);
  expect(found.meanAfter).toBeCloseTo(849.97222, 5);
  expect(found.residual).toBeCloseTo(1597457.19, 2);
  expect(found.residualWithout).toBeCloseTo(2835156.75, 2);
});

it('changes level at observation 28 with K = 1617 by ranks (calculated)', () => {
  const found = pettittTest(nile.values);
  expect(found.before).toBe(28);
  expect(found.statistic).toBe(1617);
  expect(found.pValue).toBeLessThan(1e-6);
});

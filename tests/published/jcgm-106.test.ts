// JCGM 106:2012. Clause 7 and Table 1: figures from memory, arithmetic redone. Clause 9.5: inputs read in open
// scripts, attribution from memory, outputs recomputed; the ball bearings seen at second hand.
import { describe, expect, it } from 'vitest';
import { conformityProbability } from '../../src/core/measure/conformity-probability.js';
import { conformityRisks } from '../../src/core/measure/conformity-risks.js';
import { guardBand } from '../../src/core/measure/guard-band.js';
import { normalSpread } from '../../src/core/measure/spread.js';
import { findRoot } from '../../src/core/numbers/find-root.js';
import { normalCdf } from '../../src/core/numbers/normal-cdf.js';
import { normalDensity } from '../../src/core/numbers/normal-density.js';

it('clause 7 (memory, recomputed): a Zener breakdown voltage under a one-sided limit', () => {
  const chance = conformityProbability(-5.47, normalSpread(0.05), { high: -5.4 });
  expect(chance).toBeCloseTo(0.919243, 6);
  expect(chance.toFixed(2)).toBe('0.92');
});

it('clause 7 (memory, recomputed): a motor-oil viscosity within two limits', () => {
  const chance = conformityProbability(13.6, normalSpread(1.8), { low: 12.5, high: 16.3 });
  expect(chance).toBeCloseTo(0.66263, 6);
  expect(chance.toFixed(2)).toBe('0.66');
});

it.each([
  [0.8, 0.8416, '0.84'],
  [0.9, 1.2816, '1.28'],
  [0.95, 1.6449, '1.64'],
  [0.99, 2.3263, '2.33'],
  [0.999, 3.0902, '3.09'],
])(
  'Table 1 (memory, recomputed): a conformity of %d needs z = %d',
  (probability, exact, printed) => {
    const z = guardBand(normalSpread(1), probability);
    expect(z).toBeCloseTo(exact, 4);
    expect(z.toFixed(2)).toBe(printed);
  },
);

describe('clause 9.5, precision resistors (attribution memory, recomputed)', () => {
  const population = {
    density: (ohms: number) => normalDensity((ohms - 1500) / 0.12) / 0.12,
    from: 1500 - 10 * 0.12,
    to: 1500 + 10 * 0.12,
    tolerance: { low: 1499.8, high: 1500.2 },
    spread: normalSpread(0.04),
  };

  it('finds 0.90 of them in tolerance', () => {
    const share = normalCdf(0.2 / 0.12) - normalCdf(-0.2 / 0.12);
    expect(share).toBeCloseTo(0.904419, 6);
    expect(share.toFixed(2)).toBe('0.90');
  });

  it('gives the risks with a guard band of 0.02 ohm', () => {
    const risks = conformityRisks({ ...population, acceptance: { low: 1499.82, high: 1500.18 } });
    expect(risks.consumer).toBeCloseTo(0.009878, 6);
    expect(risks.producer).toBeCloseTo(0.069027, 6);
    expect(risks.consumer.toFixed(2)).toBe('0.01');
    expect(risks.producer.toFixed(2)).toBe('0.07');
  });

  it('gives the risks without a guard band (calculated)', () => {
    const risks = conformityRisks({ ...population, acceptance: population.tolerance });
    expect(risks.consumer).toBeCloseTo(0.018942, 6);
    expect(risks.producer).toBeCloseTo(0.037208, 6);
  });
});

describe('clause 9.5.4, ball bearings (seen at second hand, recomputed)', () => {
  // Gamma with shape 4 and mean 1 um.
  const population = {
    density: (um: number) => ((4 ** 4 * um ** 3) / 6) * Math.exp(-4 * um),
    from: 0,
    to: 15,
    tolerance: { high: 2 },
  };
  const consumer = (limit: number, u: number) =>
    conformityRisks({ ...population, acceptance: { high: limit }, spread: normalSpread(u) })
      .consumer;

  it('finds 4.2 % out of tolerance where all are accepted', () => {
    expect(consumer(1e6, 0.25)).toBeCloseTo(0.04238, 6);
  });

  it('gives a risk of 0.8 % with a meter of 0.25 um', () => {
    expect(consumer(2, 0.25)).toBeCloseTo(0.008019, 6);
  });

  it('holds the risk to 0.1 % by accepting up to 1.6718 um', () => {
    const limit = findRoot((high) => consumer(high, 0.25) - 0.001, 1, 2);
    expect(limit).toBeCloseTo(1.6718, 4);
    expect(2 - limit).toBeCloseTo(0.3282, 4);
  });
});

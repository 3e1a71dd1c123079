import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conformityProbability } from '../../../src/core/measure/conformity-probability.js';
import { conformityRisks } from '../../../src/core/measure/conformity-risks.js';
import { guardBand } from '../../../src/core/measure/guard-band.js';
import { normalSpread, type Spread } from '../../../src/core/measure/spread.js';
import { spreadCdf } from '../../../src/core/measure/spread-cdf.js';
import { integrate } from '../../../src/core/numbers/integrate.js';
import { normalCdf } from '../../../src/core/numbers/normal-cdf.js';
import { normalDensity } from '../../../src/core/numbers/normal-density.js';

const seed = 20260131;
const spreads: readonly Spread[] = [
  { halfWidth: 2, normal: 0 },
  { halfWidth: 2, normal: 0.01 },
  { halfWidth: 2, normal: 0.7 },
  { halfWidth: 0.3, normal: 1 },
  { halfWidth: 1e-3, normal: 1 },
  { halfWidth: 0, normal: 1 },
];

describe('spreadCdf', () => {
  it('should be the rectangle blurred by the normal part, as integrated point by point', () => {
    const [halfWidth, normal] = [2, 0.7];
    for (const distance of [-4, -2.2, -1, 0, 0.4, 3]) {
      const blurred = integrate(
        (x) => normalCdf((distance - x) / normal) / (2 * halfWidth),
        -halfWidth,
        halfWidth,
      );
      expect(spreadCdf(distance, { halfWidth, normal })).toBeCloseTo(blurred, 11);
    }
  });

  it('should be linear for a lone rectangle and normal without one', () => {
    expect(spreadCdf(1, { halfWidth: 2, normal: 0 })).toBe(0.75);
    expect(spreadCdf(-3, { halfWidth: 2, normal: 0 })).toBe(0);
    expect(spreadCdf(3, { halfWidth: 2, normal: 0 })).toBe(1);
    expect(spreadCdf(-1.4, normalSpread(1))).toBe(normalCdf(-1.4));
  });

  it('should be a step where nothing is uncertain', () => {
    expect(spreadCdf(-1e-9, { halfWidth: 0, normal: 0 })).toBe(0);
    expect(spreadCdf(0, { halfWidth: 0, normal: 0 })).toBe(1);
  });

  it('should not jump where a narrow rectangle is taken for more of the normal part', () => {
    for (const distance of [-5, -1, -0.2]) {
      const below = spreadCdf(distance, { halfWidth: 0.9999e-4, normal: 1 });
      const above = spreadCdf(distance, { halfWidth: 1.0001e-4, normal: 1 });
      expect(Math.abs(above / below - 1)).toBeLessThan(1e-9);
    }
  });

  it.each(spreads)('should rise from 0 to 1 and be symmetric: %o', (spread) => {
    expect(spreadCdf(-Infinity, spread)).toBe(0);
    expect(spreadCdf(Infinity, spread)).toBe(1);
    let before = 0;
    for (let distance = -8; distance <= 8; distance += 0.05) {
      const p = spreadCdf(distance, spread);
      expect(p).toBeGreaterThanOrEqual(before - 1e-15);
      expect(p + spreadCdf(-distance, spread)).toBeCloseTo(1, 12);
      before = p;
    }
  });

  it('should refuse negative parts and a distance that is not a number', () => {
    expect(() => spreadCdf(0, { halfWidth: -1, normal: 1 })).toThrow('0 or more');
    expect(() => spreadCdf(NaN, normalSpread(1))).toThrow('distance');
  });
});

describe('conformityProbability', () => {
  it('should be certain without limits, and all or nothing without uncertainty', () => {
    expect(conformityProbability(389.6, normalSpread(1), {})).toBe(1);
    const exact = normalSpread(0);
    expect(conformityProbability(5, exact, { low: 4, high: 6 })).toBe(1);
    expect(conformityProbability(7, exact, { low: 4, high: 6 })).toBe(0);
    expect(conformityProbability(3, exact, { low: 4, high: 6 })).toBe(0);
  });

  it('should differ between a rectangle and a normal part of the same standard uncertainty', () => {
    // A reading 1.5 u inside its limit: the rectangle's end lies at 1.732 u.
    const rectangle = { halfWidth: Math.sqrt(3), normal: 0 };
    expect(conformityProbability(0, rectangle, { high: 1.5 })).toBeCloseTo(
      0.5 + 1.5 / (2 * Math.sqrt(3)),
      12,
    );
    expect(conformityProbability(0, normalSpread(1), { high: 1.5 })).toBeCloseTo(0.933193, 6);
    expect(conformityProbability(0, rectangle, { high: 1.74 })).toBe(1);
  });

  it('should keep the digits of a small probability on either side', () => {
    const far = conformityProbability(0, normalSpread(1), { low: 8 });
    expect(far / 6.220960574271784e-16).toBeCloseTo(1, 12);
    expect(conformityProbability(0, normalSpread(1), { high: -8 })).toBe(far);
  });

  it('should add up to 1 over classes that leave no gap', () => {
    const value = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(value, value, value, fc.constantFrom(...spreads), (y, one, other, spread) => {
        const low = Math.min(one, other);
        const high = Math.max(one, other);
        const sum =
          conformityProbability(y, spread, { high: low }) +
          conformityProbability(y, spread, { low, high }) +
          conformityProbability(y, spread, { low: high });
        expect(sum).toBeCloseTo(1, 11);
      }),
      { seed },
    );
  });

  it('should refuse limits the wrong way round and values that are not', () => {
    const spread = normalSpread(1);
    expect(() => conformityProbability(0, spread, { low: 2, high: 1 })).toThrow(
      'above the high one',
    );
    expect(() => conformityProbability(NaN, spread, {})).toThrow('finite');
    expect(() => conformityProbability(0, spread, { low: NaN })).toThrow('low limit');
  });
});

describe('guardBand', () => {
  it.each(spreads)('should leave exactly the probability wanted: %o', (spread) => {
    for (const probability of [0.6, 0.95, 0.999]) {
      const band = guardBand(spread, probability);
      expect(conformityProbability(-band, spread, { high: 0 })).toBeCloseTo(probability, 11);
    }
    expect(guardBand(spread, 0.5)).toBe(0);
  });

  it('should be a (2p - 1) for a lone rectangle', () => {
    expect(guardBand({ halfWidth: 2, normal: 0 }, 0.95)).toBeCloseTo(1.8, 12);
  });

  it('should be nil where nothing is uncertain', () => {
    expect(guardBand(normalSpread(0), 0.95)).toBe(0);
  });

  it('should refuse probabilities under one half or certain', () => {
    expect(() => guardBand(normalSpread(1), 0.4)).toThrow('from 0.5');
    expect(() => guardBand(normalSpread(1), 1)).toThrow('from 0.5');
  });
});

describe('conformityRisks', () => {
  const population = {
    density: (value: number) => normalDensity(value),
    from: -9,
    to: 9,
    tolerance: { low: -2, high: 2 },
    acceptance: { low: -2, high: 2 },
  };

  it('should be nil for an ideal meter', () => {
    const risks = conformityRisks({ ...population, spread: normalSpread(0) });
    expect(risks.consumer).toBeCloseTo(0, 6);
    expect(risks.producer).toBeCloseTo(0, 6);
  });

  it('should trade one for the other as the acceptance narrows', () => {
    const spread = { halfWidth: 0.5, normal: 0.1 };
    const wide = conformityRisks({ ...population, spread });
    const narrow = conformityRisks({ ...population, spread, acceptance: { low: -1.7, high: 1.7 } });
    expect(narrow.consumer).toBeLessThan(wide.consumer);
    expect(narrow.producer).toBeGreaterThan(wide.producer);
  });

  it('should count everything bad where everything is accepted', () => {
    const risks = conformityRisks({ ...population, acceptance: {}, spread: normalSpread(0.3) });
    expect(risks.consumer).toBeCloseTo(2 * normalCdf(-2), 10);
    expect(risks.producer).toBe(0);
  });
});

import { describe, expect, it } from 'vitest';
import { combinedCovariance } from '../../../src/core/measure/combined-covariance.js';
import { combinedUncertainty } from '../../../src/core/measure/combined-uncertainty.js';
import type { Contribution } from '../../../src/core/measure/contribution.js';
import { coverageFactor } from '../../../src/core/measure/coverage-factor.js';
import { effectiveDegreesOfFreedom } from '../../../src/core/measure/effective-degrees-of-freedom.js';
import { normalSpread } from '../../../src/core/measure/spread.js';
import { spreadCdf } from '../../../src/core/measure/spread-cdf.js';
import { trapezoidCoverageFactor } from '../../../src/core/measure/trapezoid-coverage-factor.js';
import { tQuantile } from '../../../src/core/numbers/t-quantile.js';

const row = (
  distribution: Contribution['distribution'],
  standardUncertainty: number,
  degreesOfFreedom = Infinity,
  sensitivity = 1,
): Contribution => ({
  source: distribution,
  distribution,
  standardUncertainty,
  sensitivity,
  degreesOfFreedom,
});

describe('combinedUncertainty', () => {
  it('should add squares, weighted by sensitivity', () => {
    expect(combinedUncertainty([row('normal', 3), row('normal', 2, 5, -2)])).toBe(5);
  });

  it('should cancel what two readings of one meter share', () => {
    // The difference of a pair, its scale error fully shared.
    const pair = [row('rectangular', 3), row('rectangular', 3, Infinity, -1)];
    const shared = [
      [1, 1],
      [1, 1],
    ];
    expect(combinedUncertainty(pair, shared)).toBe(0);
    expect(combinedUncertainty(pair)).toBeCloseTo(3 * Math.SQRT2, 14);
  });

  it('should refuse an empty budget and matrices that do not fit', () => {
    expect(() => combinedUncertainty([])).toThrow('at least one row');
    expect(() => combinedUncertainty([row('normal', 1)], [[1, 0]])).toThrow('1 by 1');
    expect(() => combinedUncertainty([row('normal', 1)], [[1.5]])).toThrow('-1 to 1');
    expect(() => combinedCovariance([row('normal', 1)], [])).toThrow('same inputs');
  });
});

describe('effectiveDegreesOfFreedom', () => {
  it('should be those of a single row, and infinite where nothing counts', () => {
    expect(effectiveDegreesOfFreedom([row('normal', 2, 3), row('normal', 0, 1)])).toBeCloseTo(
      3,
      12,
    );
    expect(effectiveDegreesOfFreedom([row('normal', 0, 3)])).toBe(Infinity);
  });

  it('should refuse rows of which nothing is known', () => {
    expect(() => effectiveDegreesOfFreedom([row('normal', 1, 0)])).toThrow('normal: degrees');
  });
});

describe('trapezoidCoverageFactor', () => {
  it('should hold exactly the probability asked for', () => {
    // Against the distribution itself: a rectangle is a spread without a normal part, and the trapezoid is
    // the mean of one over the other.
    for (const [a, b] of [
      [1, 0],
      [1, 0.05],
      [1, 0.5],
      [1, 1],
    ] as const) {
      for (const p of [0.5, 0.9, 0.95, 0.9545, 0.99]) {
        const u = Math.sqrt((a * a + b * b) / 3);
        const reach = trapezoidCoverageFactor(a, b, p) * u;
        const steps = 20_000;
        let held = 0;
        for (let i = 0; i < steps; i += 1) {
          const offset = b * ((2 * i + 1) / steps - 1);
          const rectangle = { halfWidth: a, normal: 0 };
          held += spreadCdf(reach - offset, rectangle) - spreadCdf(-reach - offset, rectangle);
        }
        expect(held / steps).toBeCloseTo(p, 6);
      }
    }
  });

  it('should be the same either way round, and 0.95 sqrt(3) for one rectangle', () => {
    expect(trapezoidCoverageFactor(2, 7, 0.95)).toBe(trapezoidCoverageFactor(7, 2, 0.95));
    expect(trapezoidCoverageFactor(7, 0, 0.95)).toBeCloseTo(0.95 * Math.sqrt(3), 14);
  });

  it('should refuse two zeros, negatives and certainties', () => {
    expect(() => trapezoidCoverageFactor(0, 0, 0.95)).toThrow('above 0');
    expect(() => trapezoidCoverageFactor(-1, 2, 0.95)).toThrow('0 or more');
    expect(() => trapezoidCoverageFactor(1, 1, 1)).toThrow('coverage probability');
  });
});

describe('coverageFactor', () => {
  const oneRectangle = 0.95 * Math.sqrt(3);

  it('should see one dominant rectangle up to three tenths beside it', () => {
    expect(coverageFactor([row('normal', 0.3), row('rectangular', 1)])).toBeCloseTo(
      oneRectangle,
      12,
    );
    expect(coverageFactor([row('normal', 0.301), row('rectangular', 1)])).toBeCloseTo(1.959964, 6);
  });

  it('should take two rectangles as a trapezoid while the rest stays small', () => {
    const two = [row('rectangular', 1), row('rectangular', 0.8)];
    const factor = trapezoidCoverageFactor(1, 0.8, 0.95);
    expect(coverageFactor([...two, row('normal', 0.3)])).toBeCloseTo(factor, 12);
    expect(coverageFactor([...two, row('normal', 0.5)])).toBeCloseTo(1.959964, 6);
  });

  it("should take Student's t where few readings dominate", () => {
    const budget = [row('normal', 1, 2), row('rectangular', 0.1)];
    expect(coverageFactor(budget)).toBeCloseTo(tQuantile(0.975, 2 * 1.01 ** 2), 9);
  });

  it('should not take a dominant triangle for a rectangle', () => {
    expect(coverageFactor([row('triangular', 1)])).toBeCloseTo(1.959964, 6);
  });

  it('should cover about what it claims with one rectangle and a normal part at the threshold', () => {
    const u = Math.hypot(1, 0.3);
    const spread = { halfWidth: Math.sqrt(3), normal: 0.3 };
    const reach = coverageFactor([row('rectangular', 1), row('normal', 0.3)]) * u;
    const held = 1 - 2 * spreadCdf(-reach, spread);
    expect(held).toBeGreaterThan(0.92);
    expect(held).toBeLessThan(0.97);
  });

  it('should refuse a budget of zeros', () => {
    expect(() => coverageFactor([row('normal', 0)])).toThrow('no factor');
  });
});

it('a normal spread has no rectangle', () => {
  expect(normalSpread(2)).toEqual({ halfWidth: 0, normal: 2 });
});

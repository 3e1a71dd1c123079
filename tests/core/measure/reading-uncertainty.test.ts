import { describe, expect, it } from 'vitest';
import { accuracyHalfWidth } from '../../../src/core/measure/accuracy-half-width.js';
import { readingUncertainty } from '../../../src/core/measure/reading-uncertainty.js';
import { rectangularUncertainty } from '../../../src/core/measure/rectangular-uncertainty.js';
import { spreadOfBudget } from '../../../src/core/measure/spread.js';
import { tQuantile } from '../../../src/core/numbers/t-quantile.js';

const accuracy = { percent: 0.5, counts: 3 };
const line = { value: 389.6, resolution: 0.1, accuracy, repeatability: null };

describe('readingUncertainty', () => {
  it('should combine accuracy and resolution as rectangles', () => {
    const reading = readingUncertainty(line);
    // By hand: (1.948 + 0.3) / sqrt 3 and 0.1 / sqrt 12.
    expect(reading.standardUncertainty).toBeCloseTo(
      Math.hypot(2.248 / Math.sqrt(3), 0.1 / Math.sqrt(12)),
      12,
    );
    expect(reading.degreesOfFreedom).toBe(Infinity);
    expect(reading.coverageFactor).toBeCloseTo(0.95 * Math.sqrt(3), 12);
    expect(reading.expanded).toBeCloseTo(reading.coverageFactor * reading.standardUncertainty, 12);
    expect(reading.budget.map((row) => row.source)).toEqual(['accuracy', 'resolution']);
  });

  it('should add the mean of repeated readings and the lead zero', () => {
    const reading = readingUncertainty({
      ...line,
      repeatability: { s: 8, n: 4 },
      leadZero: { standardUncertainty: 0.05, degreesOfFreedom: 9 },
    });
    expect(reading.budget.map((row) => row.source)).toEqual([
      'accuracy',
      'resolution',
      'repeatability',
      'lead zero',
    ]);
    expect(reading.standardUncertainty).toBeCloseTo(
      Math.hypot(readingUncertainty(line).standardUncertainty, 4, 0.05),
      12,
    );
    // The spread of four readings dominates: hardly more than its three degrees of freedom.
    expect(reading.degreesOfFreedom).toBeGreaterThan(3);
    expect(reading.degreesOfFreedom).toBeLessThan(4);
    expect(reading.coverageFactor).toBeCloseTo(tQuantile(0.975, reading.degreesOfFreedom), 12);
  });

  it('should be the same for a negative value', () => {
    const negative = readingUncertainty({ ...line, value: -389.6 });
    expect(negative.standardUncertainty).toBe(readingUncertainty(line).standardUncertainty);
  });

  it('should be zero, without a factor, for an ideal meter', () => {
    const ideal = {
      value: 5,
      resolution: 0,
      accuracy: { percent: 0, counts: 0 },
      repeatability: null,
    };
    expect(readingUncertainty(ideal)).toMatchObject({
      standardUncertainty: 0,
      expanded: 0,
      coverageFactor: 0,
    });
  });

  it('should refuse statements that cannot be', () => {
    expect(() => readingUncertainty({ ...line, value: NaN })).toThrow('finite value');
    expect(() => readingUncertainty({ ...line, resolution: -1 })).toThrow('0 or more');
    expect(() => readingUncertainty({ ...line, repeatability: { s: 1, n: 1 } })).toThrow(
      'two or more',
    );
    expect(() => readingUncertainty({ ...line, repeatability: { s: NaN, n: 3 } })).toThrow(
      '0 or more',
    );
    const leadZero = { standardUncertainty: Infinity, degreesOfFreedom: 3 };
    expect(() => readingUncertainty({ ...line, leadZero })).toThrow('finite');
  });
});

describe('accuracyHalfWidth and its neighbours', () => {
  it('should refuse negative parts', () => {
    const input = { value: 1, resolution: 0.1, accuracy: { percent: -1, counts: 0 } };
    expect(() => accuracyHalfWidth(input)).toThrow('0 or more');
    expect(() => rectangularUncertainty(-1)).toThrow('half-width');
    expect(() => rectangularUncertainty(NaN)).toThrow('half-width');
  });
});

describe('spreadOfBudget', () => {
  it('should keep the largest rectangle and join the rest', () => {
    const { budget } = readingUncertainty({ ...line, repeatability: { s: 0.4, n: 4 } });
    const spread = spreadOfBudget(budget);
    expect(spread.halfWidth).toBeCloseTo(2.248, 12);
    expect(spread.normal).toBeCloseTo(Math.hypot(0.2, 0.1 / Math.sqrt(12)), 12);
  });

  it('should be all normal where there is no rectangle', () => {
    const { budget } = readingUncertainty({ ...line, repeatability: { s: 0.4, n: 4 } });
    const normal = budget.map((row) => ({ ...row, distribution: 'normal' as const }));
    expect(spreadOfBudget(normal).halfWidth).toBe(0);
    expect(spreadOfBudget(normal).normal).toBeCloseTo(
      readingUncertainty({ ...line, repeatability: { s: 0.4, n: 4 } }).standardUncertainty,
      12,
    );
  });
});

import { describe, expect, it } from 'vitest';
import {
  compareReadings,
  normalisedError,
  type Read,
} from '../../../src/core/recheck/difference.js';

const read = (value: number, u: number, verdict: Read['verdict'] = 'normal'): Read => ({
  verdict,
  value,
  standardUncertainty: u,
});
const overload = (verdict: Read['verdict']): Read => ({
  verdict,
  overload: true,
  standardUncertainty: null,
});
const unread: Read = { verdict: 'unread', standardUncertainty: null };

describe('the difference of two readings', () => {
  // Worked by hand, U = 2 u: u² = 1.5² + 2² + 2 * 0.1² + (0.5² + 0.525²) / 3 = 6.4452, E = 5 / 5.0775.
  it('should be the difference over the expanded uncertainty of both readings, settling and contact', () => {
    const e = normalisedError(
      { value: 100, standardUncertainty: 1.5 },
      { value: 105, standardUncertainty: 2 },
      0.1,
    );
    expect(e).toBeCloseTo(0.98474, 4);
  });

  // Where settling and contact count for nothing: sqrt((2 * 0.3)² + (2 * 0.4)²) = 1.
  it('should be 1 where the difference is as large as that', () => {
    const e = normalisedError(
      { value: -0.5, standardUncertainty: 0.3 },
      { value: 0.5, standardUncertainty: 0.4 },
      0,
    );
    expect(e).toBeCloseTo(1, 4);
  });

  it('should not depend on which came first, and shrink with what contact may change', () => {
    const [a, b] = [
      { value: 388, standardUncertainty: 1 },
      { value: 392, standardUncertainty: 1 },
    ];
    expect(normalisedError(a, b, 0.15)).toBe(normalisedError(b, a, 0.15));
    expect(normalisedError(a, b, 0.5)).toBeLessThan(normalisedError(a, b, 0));
  });

  it.each([
    ['nothing but noise', read(388, 1.2), read(389.5, 1.2), 'unchanged'],
    ['more than both uncertainties', read(388, 1.2), read(398, 1.2), 'changed'],
    ['a value where nothing was', overload('open'), read(388, 1.2), 'changed'],
    ['nothing, as before', overload('normal'), overload('normal'), 'unchanged'],
    ['good before and open now', read(388, 1.2), overload('open'), 'newly-bad'],
    ['good before and low now', read(388, 1.2), read(300, 1, 'low'), 'newly-bad'],
    ['bad before and as bad now', read(300, 1, 'low'), read(301, 1, 'low'), 'unchanged'],
    ['not read now', read(388, 1.2), unread, 'unknown'],
    ['not read before', unread, read(388, 1.2), 'unknown'],
  ] as const)('should tell %s', (_, before, after, difference) => {
    expect(compareReadings(before, after, 0.15).difference).toBe(difference);
  });

  it('should call two equal exact readings the same', () => {
    expect(compareReadings(read(0, 0), read(0, 0), 0)).toEqual({
      difference: 'unchanged',
      score: 0,
    });
  });
});

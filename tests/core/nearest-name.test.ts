import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, nearestName } from '../../src/core/nearest-name.js';

describe('the distance between two names', () => {
  // Counted by hand.
  it.each([
    ['', '', 0],
    ['', 'abc', 3],
    ['tolernace', 'tolerance', 1],
    ['kitten', 'sitting', 3],
    ['D0_P', 'D0_N', 1],
    ['ca', 'abc', 3],
  ])('should count the steps from "%s" to "%s"', (a, b, steps) => {
    expect(editDistance(a, b)).toBe(steps);
    expect(editDistance(b, a)).toBe(steps);
  });

  it('should be nought for the same name only, and never more than the longer one', () => {
    const name = fc.string({ maxLength: 12 });
    fc.assert(
      fc.property(name, name, (a, b) => {
        const distance = editDistance(a, b);
        expect(distance === 0).toBe(a === b);
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
      { seed: 6, numRuns: 300 },
    );
  });
});

describe('the nearest name', () => {
  const known = ['tolerance', 'nominal', 'polarity', 'GND', 'D0_P'];

  it.each([
    ['tolerence', 'tolerance'],
    ['Nominal', 'nominal'],
    ['GDN', 'GND'],
    ['D0P', 'D0_P'],
    ['volts', undefined],
    ['GND', undefined],
    ['x'.repeat(5000), undefined],
  ])('should for "%.20s" be %s', (name, nearest) => {
    expect(nearestName(name, known)).toBe(nearest);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oneSidedP } from '../../../src/core/press/look-table.js';

describe('oneSidedP', () => {
  // Fisher, The Design of Experiments (1935), ch. 2 (from memory); the rest of the column is 1 / C(2k, k).
  it.each([
    [3, 1 / 20],
    [4, 1 / 70],
    [5, 1 / 252],
    [6, 1 / 924],
    [8, 1 / 12_870],
  ])('is smallest for %i cycles told apart: %d', (cycles, p) => {
    expect(oneSidedP(cycles, cycles, 0)).toBeCloseTo(p, 14);
  });

  it('is 17/70 for three right of four (R documentation of fisher.test, tea-drinker example)', () => {
    expect(oneSidedP(4, 3, 1)).toBeCloseTo(17 / 70, 14);
  });

  it('falls with each sighting under pressure and rises with each one without', () => {
    const counts = fc
      .integer({ min: 1, max: 8 })
      .chain((k) => fc.tuple(fc.constant(k), fc.nat({ max: k - 1 }), fc.nat({ max: k - 1 })));
    fc.assert(
      fc.property(counts, ([cycles, pressed, released]) => {
        const p = oneSidedP(cycles, pressed, released);
        expect(oneSidedP(cycles, pressed + 1, released)).toBeLessThanOrEqual(p + 1e-12);
        expect(oneSidedP(cycles, pressed, released + 1)).toBeGreaterThanOrEqual(p - 1e-12);
      }),
      { seed: 6, numRuns: 300 },
    );
  });

  it.each([
    [9, 0, 0],
    [4, 5, 0],
    [4, 0, -1],
  ])('refuses %i cycles with %i and %i', (cycles, pressed, released) => {
    expect(() => oneSidedP(cycles, pressed, released)).toThrow(RangeError);
  });
});

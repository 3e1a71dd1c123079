import { describe, expect, it } from 'vitest';
import { leadZero } from '../../../src/core/context/lead-zero.js';
import type { Reading } from '../../../src/core/reading.js';
import { assumedAccuracy } from '../../../src/core/walk/open-session.js';

const readings = (...values: number[]): Reading[] =>
  values.map((value, at) => ({ t: at / 4, function: 'resistance', value, resolution: 0.1 }));

const outcome = (given: readonly Reading[]) => leadZero(given, assumedAccuracy);

describe('leadZero', () => {
  it('should be the mean, with the uncertainty of the mean and of the last digit', () => {
    const given = outcome(readings(0.2, 0.3, 0.2, 0.3, 0.2));
    // s² = 0.003; GUM 4.2.3 (from memory): s²/n; GUM F.2.2.1 (from memory): d²/12.
    expect(given).toEqual({
      ok: true,
      zero: {
        ohms: expect.closeTo(0.24, 12),
        standardUncertainty: expect.closeTo(Math.sqrt(0.003 / 5 + 0.01 / 12), 12),
        degreesOfFreedom: 4,
        readings: 5,
      },
    });
  });

  it('should keep the uncertainty of the last digit where every reading is the same', () => {
    const given = outcome(readings(0.2, 0.2, 0.2, 0.2, 0.2));
    expect(given.ok && given.zero.standardUncertainty).toBeCloseTo(0.1 / Math.sqrt(12), 12);
  });

  it('should infer the resolution where the meter does not tell it', () => {
    const untold = readings(0.2, 0.2, 0.2, 0.2, 0.2).map(({ t }) => ({
      t,
      function: 'resistance' as const,
      value: 0.2,
    }));
    const given = outcome(untold);
    expect(given.ok && given.zero.standardUncertainty).toBeCloseTo(0.1 / Math.sqrt(12), 12);
  });

  it('should allow one step below zero for rounding, and no more', () => {
    expect(outcome(readings(0, -0.1, 0, -0.1, 0)).ok).toBe(true);
    expect(outcome(readings(-0.3, -0.3, -0.3, -0.3, -0.3))).toEqual({
      ok: false,
      refused: { because: 'negative', ohms: expect.closeTo(-0.3, 12) },
    });
  });

  it.each<[string, readonly Reading[], object]>([
    ['too few', readings(0.2, 0.2, 0.2), { because: 'too-few', readings: 3, needed: 5 }],
    [
      'more than leads have',
      readings(1.4, 1.4, 1.4, 1.4, 1.4),
      { because: 'too-large', limitOhms: 1 },
    ],
    [
      'what does not hold still',
      readings(0.2, 0.2, 0.9, 0.2, 0.2),
      { because: 'unsteady', limitOhms: expect.closeTo(0.3, 12) },
    ],
    [
      'probes that do not touch',
      [...readings(0.2, 0.2, 0.2, 0.2), { t: 9, function: 'resistance', overload: true }],
      { because: 'not-touching' },
    ],
    [
      'another function',
      [{ t: 0, function: 'diode', value: 0.001 }],
      { because: 'wrong-function', function: 'diode' },
    ],
    [
      'a held display',
      readings(0.2, 0.2, 0.2, 0.2, 0.2).map((one) => ({ ...one, flags: ['hold' as const] })),
      { because: 'flagged', flag: 'hold' },
    ],
  ])('should refuse %s', (_what, given, refused) => {
    const found = outcome(given);
    expect(found.ok).toBe(false);
    expect(found).toMatchObject({ refused });
  });

  it('should not mind a low battery, a blank or a garbled line among the rest', () => {
    const given = outcome([
      ...readings(0.2, 0.2, 0.2, 0.2, 0.2).map((one) => ({
        ...one,
        flags: ['low-battery' as const],
      })),
      { t: 8, blank: true },
      { t: 9, fault: '?' },
    ]);
    expect(given.ok && given.zero.readings).toBe(5);
  });

  it('should refuse nothing at all as too few', () => {
    expect(outcome([])).toMatchObject({ refused: { because: 'too-few', readings: 0 } });
  });
});

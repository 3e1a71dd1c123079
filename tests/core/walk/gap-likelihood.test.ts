// Slips last 50 to 400 ms, lifts half a second and more: common practice, no source.
import { describe, expect, it } from 'vitest';
import { unknownGap } from '../../../src/core/walk/gap.js';
import { gapLikelihood } from '../../../src/core/walk/gap-likelihood.js';
import { learnLift, noDelay } from '../../../src/core/walk/ranging.js';

const weighed = (offS: number, periodS: number, ranging = noDelay) =>
  gapLikelihood({
    gap: { ...unknownGap, of: 0, level: 388, leftT: 0, offS },
    periodS,
    landing: null,
    ranging,
  });

/** Log-odds of lift against slip. */
const odds = (offS: number, periodS: number): number => {
  const { slip, lift } = weighed(offS, periodS);
  return Math.log(lift / slip);
};

const periods = [0.02, 0.05, 0.1, 0.3];

describe('gapLikelihood', () => {
  it.each(periods)('longer gaps favour lift, at %d s between readings', (periodS) => {
    let before = Number.NEGATIVE_INFINITY;
    for (let offS = 0.1; offS <= 1.2; offS += 0.05) {
      const now = odds(offS, periodS);
      expect(now).toBeGreaterThanOrEqual(before - 0.1);
      before = now;
    }
    expect(odds(1, periodS)).toBeGreaterThan(odds(0.1, periodS) + 3);
  });

  it.each(periods)('0.2 s is a slip and 1 s is a lift, at %d s between readings', (periodS) => {
    expect(odds(0.2, periodS)).toBeLessThan(0);
    expect(odds(1, periodS)).toBeGreaterThan(3);
  });

  it('slow readings tell less than fast ones', () => {
    expect(Math.abs(odds(0.2, 0.3))).toBeLessThan(Math.abs(odds(0.2, 0.02)));
  });

  it('where nobody watched, both are equally likely', () => {
    const { slip, lift } = gapLikelihood({
      gap: unknownGap,
      periodS: 0.1,
      landing: null,
      ranging: noDelay,
    });
    expect(slip).toBe(lift);
  });

  it('with a meter known to look for its range for 1.5 s, 1.7 s of overload may be a slip', () => {
    let ranging = noDelay;
    for (const runS of [2.1, 2.3, 2.6, 2.2, 2.9, 2.4])
      ranging = learnLift(ranging, runS, 0.1, false);
    expect(ranging.probability).toBeGreaterThan(0.5);
    const known = weighed(1.7, 0.1, ranging);
    const unknown = weighed(1.7, 0.1);
    expect(known.slip / known.lift).toBeGreaterThan((10 * unknown.slip) / unknown.lift);
  });

  it('is finite and positive for any gap', () => {
    for (const offS of [0, 0.01, 0.4, 1, 5, 60, 3600]) {
      for (const periodS of periods) {
        const { slip, lift } = weighed(offS, periodS);
        expect(slip).toBeGreaterThan(0);
        expect(lift).toBeGreaterThan(0);
        expect(Number.isFinite(slip + lift)).toBe(true);
      }
    }
  });
});

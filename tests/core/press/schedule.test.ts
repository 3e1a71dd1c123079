import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { paceFor } from '../../../src/core/press/pace.js';
import { drawsNeeded, planCues, strata } from '../../../src/core/press/schedule.js';

const fraction = fc.double({ min: 0, max: 0.999, noNaN: true });
const draws = fc.array(fraction, { minLength: drawsNeeded, maxLength: drawsNeeded });

describe('planCues', () => {
  it('presses and releases by turns for eight cycles and closes with a release', () => {
    const cues = planCues(
      paceFor(0.1),
      0,
      Array.from({ length: drawsNeeded }, (_, i) => i / drawsNeeded),
    );
    expect(cues.map(({ cue }) => cue)).toEqual([
      ...Array.from({ length: 8 }, () => ['press', 'release']).flat(),
      'release',
    ]);
  });

  it('keeps every window within its bounds, and spreads each four cycles over all quarters', () => {
    fc.assert(
      fc.property(draws, fc.constantFrom(0.02, 0.1, 0.4), (given, updateS) => {
        const pace = paceFor(updateS);
        const cues = planCues(pace, 5, given);
        expect(cues[0]?.t).toBeGreaterThanOrEqual(5 + pace.allowanceS + pace.tailS);
        const quarters = cues.slice(0, -1).map(({ t, cue }, i) => {
          const { shortestS, longestS } = pace[cue];
          const lengthS = (cues[i + 1]?.t ?? 0) - t;
          const share = (lengthS - shortestS) / (longestS - shortestS);
          expect(share).toBeGreaterThan(-1e-9);
          expect(share).toBeLessThan(1 + 1e-9);
          return Math.min(strata - 1, Math.floor(share * strata + 1e-9));
        });
        for (const half of [0, 1]) {
          const ofKind = quarters.filter((_, i) => i % 2 === half);
          expect(ofKind.slice(0, 4).sort()).toEqual([0, 1, 2, 3]);
          expect(ofKind.slice(4).sort()).toEqual([0, 1, 2, 3]);
        }
      }),
      { seed: 9, numRuns: 100 },
    );
  });

  it('leaves time for the slowest answer and a steady end in every window', () => {
    for (const rate of [2.5, 4, 10, 50]) {
      const { press, release, allowanceS, tailS } = paceFor(1 / rate);
      // Lag 0.55 s, sticking 1 s (issue: the press benchmark), and the two periods until a clean reading.
      expect(press.shortestS).toBeGreaterThanOrEqual(0.55 + 2 / rate + tailS);
      expect(release.shortestS).toBeGreaterThanOrEqual(1.55 + 2 / rate + tailS);
      expect(press.shortestS).toBeGreaterThan(allowanceS);
      expect(allowanceS).toBeCloseTo(Math.max(0.4, 3 / rate), 12);
    }
  });

  it('refuses too few draws, and draws that are no fractions', () => {
    const pace = paceFor(0.1);
    expect(() => planCues(pace, 0, [0.5])).toThrow(/25 draws, not 1/);
    const bad = new Array<number>(drawsNeeded).fill(0.5);
    expect(() => planCues(pace, 0, [...bad.slice(1), 1])).toThrow(/\[0, 1\)/);
    expect(() => planCues(pace, 0, [...bad.slice(1), Number.NaN])).toThrow(RangeError);
  });
});

describe('paceFor', () => {
  it.each([
    [0, 0],
    [Number.POSITIVE_INFINITY, 0],
    [0.1, -1],
    [0.1, Number.NaN],
  ])('refuses a period of %d with %d of ranging', (updateS, rangingS) => {
    expect(() => paceFor(updateS, rangingS)).toThrow(RangeError);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  findingProbabilities,
  tellingFindings,
  tellingVerdicts,
  verdictProbabilities,
} from '../../../src/core/suspects/channel.js';
import { type ShownClass, type Shows, shownClasses } from '../../../src/core/suspects/shows.js';

const surely = (shown: ShownClass): Shows => {
  const none = { normal: 0, low: 0, high: 0, short: 0, open: 0 };
  return { ...none, [shown]: 1 };
};
const pressNoise = { falselyAnswers: 0.001, missesAnswer: 0.005 };
const noise = { missed: 0.01, misjudged: 0.02 };

const arbitraryShows = fc
  .array(fc.integer({ min: 0, max: 100 }), { minLength: 5, maxLength: 5 })
  .filter((shares) => shares.some((share) => share > 0))
  .map((shares): Shows => {
    const sum = shares.reduce((total, share) => total + share, 0);
    const [normal = 0, low = 0, high = 0, short = 0, open = 0] = shares.map((share) => share / sum);
    return { normal, low, high, short, open };
  });

describe('verdicts and findings', () => {
  it('should be distributions whatever the meter shows', () => {
    fc.assert(
      fc.property(
        arbitraryShows,
        arbitraryShows,
        fc.boolean(),
        fc.boolean(),
        (a, b, flag, overloadIsNormal) => {
          const sum = (all: readonly number[]): number =>
            all.reduce((total, one) => total + one, 0);
          const touched = { shows: a, intermittent: flag, overloadIsNormal };
          expect(sum(verdictProbabilities(touched, noise))).toBeCloseTo(1, 12);
          const pressed = { released: a, pressed: b, unmoved: flag, overloadIsNormal };
          expect(sum(findingProbabilities(pressed, pressNoise))).toBeCloseTo(1, 12);
        },
      ),
      { seed: 4, numRuns: 200 },
    );
  });

  it.each(shownClasses)('should most often tell %s as it is', (shown) => {
    const told = verdictProbabilities(
      { shows: surely(shown), intermittent: false, overloadIsNormal: false },
      noise,
    );
    expect(tellingVerdicts[told.indexOf(Math.max(...told))]).toBe(shown);
  });

  it('should tell a missed pin as open, and as normal where overload is expected', () => {
    const seen = { shows: surely('short'), intermittent: false };
    const at = (verdict: string): number => (tellingVerdicts as readonly string[]).indexOf(verdict);
    expect(verdictProbabilities({ ...seen, overloadIsNormal: false }, noise)[at('open')]).toBe(
      0.01,
    );
    expect(verdictProbabilities({ ...seen, overloadIsNormal: true }, noise)[at('normal')]).toBe(
      0.01,
    );
  });

  it('should expect a wobble from a joint that answers to pressure', () => {
    const seen = { shows: surely('open'), overloadIsNormal: false };
    const at = tellingVerdicts.indexOf('wobble');
    const still = verdictProbabilities({ ...seen, intermittent: false }, noise)[at] ?? 1;
    const moving = verdictProbabilities({ ...seen, intermittent: true }, noise)[at] ?? 0;
    expect(moving).toBeGreaterThan(10 * still);
  });

  it.each<[ShownClass, ShownClass, string]>([
    ['open', 'normal', 'loose'],
    ['high', 'normal', 'loose'],
    ['normal', 'open', 'cracked'],
    ['normal', 'short', 'bridged'],
    ['short', 'normal', 'bridged'],
    ['open', 'open', 'steady-open'],
    ['normal', 'normal', 'steady'],
    ['high', 'high', 'steady'],
  ])('should find %s released and %s pressed to be %s', (released, pressed, finding) => {
    const found = findingProbabilities(
      {
        released: surely(released),
        pressed: surely(pressed),
        unmoved: released === pressed,
        overloadIsNormal: false,
      },
      pressNoise,
    );
    expect(tellingFindings[found.indexOf(Math.max(...found))]).toBe(finding);
  });
});

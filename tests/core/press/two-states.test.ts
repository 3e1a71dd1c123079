import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Sighting, segmentTrace } from '../../../src/core/press/two-states.js';

/** One letter a reading: c contact, anything else none. */
const trace = (picture: string, rate: number): Sighting[] =>
  [...picture].map((letter, i) => ({ t: i / rate, contact: letter === 'c' }));

const states = (picture: string, rate: number): string =>
  segmentTrace(trace(picture, rate))
    .map(({ contact, readings }) => `${contact ? 'c' : '-'}${readings}`)
    .join(' ');

describe('segmentTrace', () => {
  it('takes one odd reading of a slow meter for a slip, and two for a change', () => {
    expect(states('------c-----', 2.5)).toBe('-12');
    expect(states('-----cc-----', 2.5)).toBe('-5 c2 -5');
  });

  it('takes three odd readings of a fast meter for a bounce, and five for a change', () => {
    expect(states(`${'-'.repeat(40)}ccc${'-'.repeat(40)}`, 50)).toBe('-83');
    expect(states(`${'-'.repeat(40)}ccccc${'-'.repeat(40)}`, 50)).toBe('-40 c5 -40');
  });

  it('has nothing to say of nothing', () => {
    expect(segmentTrace([])).toEqual([]);
  });

  it('is as likely as the best course found by trying all of them', () => {
    // The model, written out again: symmetric switching at 0.5/s, one reading in twenty wrong.
    const logLikelihood = (sightings: readonly Sighting[], course: number): number =>
      sightings.reduce((sum, { t, contact }, i) => {
        const state = (course >> i) & 1;
        const shows = Math.log((state === 1) === contact ? 0.95 : 0.05);
        const before = sightings[i - 1];
        if (before === undefined) return sum + shows;
        const stay = (1 + Math.exp(-(t - before.t))) / 2;
        const same = state === ((course >> (i - 1)) & 1);
        return sum + shows + Math.log(same ? stay : 1 - stay);
      }, 0);
    const sightings = fc
      .array(fc.tuple(fc.double({ min: 0.02, max: 0.6, noNaN: true }), fc.boolean()), {
        minLength: 1,
        maxLength: 9,
      })
      .map((pairs) => {
        let t = 0;
        return pairs.map(([gapS, contact]): Sighting => {
          t += gapS;
          return { t, contact };
        });
      });
    fc.assert(
      fc.property(sightings, (given) => {
        let course = 0;
        given.forEach(({ t }, i) => {
          const segment = segmentTrace(given).find(({ fromS, toS }) => t >= fromS && t <= toS);
          if (segment?.contact) course |= 1 << i;
        });
        const all = Array.from({ length: 2 ** given.length }, (_, c) => logLikelihood(given, c));
        expect(logLikelihood(given, course)).toBeCloseTo(Math.max(...all), 9);
      }),
      { seed: 67, numRuns: 60 },
    );
  });
});

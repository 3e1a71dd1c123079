import { describe, expect, it } from 'vitest';
import { hold, land, lift } from '../../src/bench/gestures.js';
import { type Pace, steadyPace } from '../../src/bench/pace.js';
import { type Contact, rehearse } from './support/rehearsal.js';

const pinsOf = (contacts: readonly Contact[]) => contacts.map(({ pin }) => pin);

describe('clumsiness', () => {
  /** Lands on place 10 and holds, again and again. */
  const landings = (pace: Pace, seconds = 60) =>
    rehearse({
      pace,
      seconds,
      work: function* work(body) {
        for (;;) {
          yield* land(body, 10);
          yield* hold(body, body.nowS + 2);
          yield* lift(body);
        }
      },
    }).contacts;

  it('should not happen to a steady hand', () => {
    const contacts = landings(steadyPace);
    expect(new Set(pinsOf(contacts))).toEqual(new Set(['11']));
    expect(contacts.every(({ fromS, toS }) => toS - fromS > 1.9 || toS === 60)).toBe(true);
  });

  it('should land on a neighbour first when it does, for no longer than told', () => {
    const contacts = landings({ ...steadyPace, neighbourChance: 1 });
    const beside = contacts.filter(({ pin }) => pin !== '11');
    expect(beside.length).toBeGreaterThan(15);
    expect(new Set(pinsOf(beside))).toEqual(new Set(['10', '12']));
    expect(Math.max(...beside.map(({ fromS, toS }) => toS - fromS))).toBeLessThan(0.302);
  });

  it('should slip for 50 to 400 ms when it does', () => {
    const contacts = landings({ ...steadyPace, slipChance: 1 });
    const gaps = contacts.slice(1).map(({ fromS }, i) => fromS - (contacts[i]?.toS ?? 0));
    const slips = gaps.filter((gapS) => gapS < 0.45);
    expect(slips.length).toBeGreaterThan(15);
    expect(Math.min(...slips)).toBeGreaterThan(0.049);
    expect(Math.max(...slips)).toBeLessThan(0.402);
  });

  it('should happen about as often as its chance says', () => {
    const contacts = landings({ ...steadyPace, slipChance: 0.12 }, 1200);
    const gaps = contacts.slice(1).map(({ fromS }, i) => fromS - (contacts[i]?.toS ?? 0));
    const slips = gaps.filter((gapS) => gapS < 0.45).length;
    const holds = gaps.length - slips;
    // Four standard deviations of a binomial share.
    expect(Math.abs(slips / holds - 0.12)).toBeLessThan(4 * Math.sqrt((0.12 * 0.88) / holds));
  });

  it('should bounce on landing within the first tenth of a second', () => {
    const contacts = landings({ ...steadyPace, bounces: 3 });
    const short = contacts.filter(({ fromS, toS }) => toS - fromS < 0.02);
    expect(short.length).toBeGreaterThan(10);
  });

  it('should hunt for seconds when it does', () => {
    const contacts = landings({ ...steadyPace, huntChance: 1 });
    const gaps = contacts.slice(1).map(({ fromS }, i) => fromS - (contacts[i]?.toS ?? 0));
    expect(Math.min(...gaps)).toBeGreaterThan(1.4);
    expect(Math.max(...gaps)).toBeLessThan(7);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  judgeWithoutReference,
  type ReferenceFree,
} from '../../../src/core/context/judge-without-reference.js';
import type { ReadPin } from '../../../src/core/context/read-pin.js';
import { planWalk } from '../../../src/core/profile/plan.js';
import { leastConfidence } from '../../../src/core/walk/judge.js';
import { shippedProfile } from '../../bench/support/profile-files.js';
import { planOf, readsNothing, readsValue, signal, unread } from './demo-board.js';

/** A bus of four pairs, a supply on two pins, grounds, a spare: no expected values. */
const pair = (name: string) => ({
  [`${name}_P`]: signal('data', null, 0.1, `${name}_N`),
  [`${name}_N`]: signal('data', null, 0.1, `${name}_P`),
});
const plan = planOf(
  {
    GND: { kind: 'ground' },
    ...pair('D0'),
    ...pair('D1'),
    ...pair('D2'),
    ...pair('D3'),
    VCC: { kind: 'supply' },
    BEEP: { kind: 'signal' },
    SPARE: { kind: 'unused' },
  },
  [
    'GND',
    'D0_P',
    'D0_N',
    'D1_P',
    'D1_N',
    'D2_P',
    'D2_N',
    'D3_P',
    'D3_N',
    'VCC',
    'VCC',
    'BEEP',
    'SPARE',
    'GND',
  ],
);

const board = (
  change: Readonly<Record<string, ReadPin>> = {},
): ReadonlyMap<string, ReferenceFree> => {
  const pins = plan.pins.map(({ pin, line, kind }, at): ReadPin => {
    const own = change[pin] ?? change[line];
    if (own !== undefined) return own;
    if (kind === 'ground') return readsValue(0.2, 0.06);
    if (kind === 'unused') return readsNothing;
    if (kind === 'supply') return readsValue(140);
    return line === 'BEEP' ? readsValue(2200) : readsValue(400 + (at % 3));
  });
  return new Map(judgeWithoutReference(pins, plan).map((opinion) => [opinion.pin, opinion]));
};

const offPins = (opinions: ReadonlyMap<string, ReferenceFree>): string[] =>
  [...opinions.values()].filter(({ probably }) => probably === 'off').map(({ pin }) => pin);

describe('judgeWithoutReference', () => {
  it('should name a fault only as sure as any other verdict must be, whatever is read', () => {
    const read = fc.oneof(
      fc.constant(readsNothing),
      fc.double({ min: 0.1, max: 5000, noNaN: true }).map((value) => readsValue(value)),
    );
    const named = new Set<string>();
    fc.assert(
      fc.property(fc.array(read, { minLength: 14, maxLength: 14 }), (reads) => {
        const change = Object.fromEntries(
          plan.pins.map(({ pin }, at) => [pin, reads[at] as ReadPin]),
        );
        for (const { verdict, confidence } of board(change).values()) {
          if (verdict === null || verdict === 'unsure' || verdict === 'normal') continue;
          named.add(verdict);
          expect(confidence).toBeGreaterThanOrEqual(leastConfidence);
        }
      }),
      { numRuns: 300 },
    );
    expect([...named].sort()).toEqual(['high', 'low', 'open', 'short']);
  });

  it('should find nothing off on a good board, and say what it cannot tell', () => {
    const opinions = board();
    expect(opinions.size).toBe(plan.pins.length);
    expect(offPins(opinions)).toEqual([]);
    expect(opinions.get('2')).toMatchObject({ probably: 'good', because: ['mate-alike'] });
    expect(opinions.get('1')).toMatchObject({ probably: 'good', because: ['ground-good'] });
    expect(opinions.get('13')).toMatchObject({ probably: 'good', because: ['unused-overload'] });
    expect(opinions.get('12')).toMatchObject({ probably: 'unknown', because: [], verdict: null });
  });

  it('should leave out what was not read and what wobbles', () => {
    const opinions = board({ BEEP: unread, D0_P: { ...readsValue(400), verdict: 'wobble' } });
    expect(opinions.has('12')).toBe(false);
    expect(opinions.has('2')).toBe(false);
    // The mate of what wobbles is judged by its group.
    expect(opinions.get('3')).toMatchObject({ probably: 'good', because: ['group-alike'] });
  });

  it('should see an open line by its mate that conducts', () => {
    const opinions = board({ D1_N: readsNothing });
    expect(offPins(opinions)).toEqual(['5']);
    expect(opinions.get('5')).toMatchObject({ because: ['mate-conducts'], verdict: 'open' });
    expect(opinions.get('4')).toMatchObject({ probably: 'good', because: ['group-alike'] });
  });

  it('should leave it open whether a silent pair is broken or coupled through capacitors', () => {
    const opinions = board({ D1_P: readsNothing, D1_N: readsNothing });
    expect(opinions.get('4')).toMatchObject({
      probably: 'unknown',
      because: ['mate-also-overload'],
      verdict: 'unsure',
    });
    expect(offPins(opinions)).toEqual([]);
  });

  it('should call a leaky line low where mate and group speak against it', () => {
    const opinions = board({ D2_N: readsValue(330) });
    expect(offPins(opinions)).toEqual(['7']);
    expect(opinions.get('7')).toMatchObject({
      verdict: 'low',
      because: ['group-apart', 'mate-differs'],
    });
    expect(opinions.get('6')).toMatchObject({ probably: 'good', because: ['group-alike'] });
  });

  it('should call a raised line high in the same way', () => {
    expect(board({ D2_N: readsValue(900) }).get('7')).toMatchObject({ verdict: 'high' });
  });

  it('should see a pair that is off alike, but not say which way it should be', () => {
    const opinions = board({ D3_P: readsValue(300), D3_N: readsValue(302) });
    expect(offPins(opinions)).toEqual(['8', '9']);
    expect(opinions.get('8')).toMatchObject({
      verdict: 'unsure',
      because: ['group-apart', 'mate-alike'],
    });
  });

  it('should not say which of two lines is off where only the two can be compared', () => {
    const two = planOf({
      A_P: signal(undefined, null, 0.1, 'A_N'),
      A_N: signal(undefined, null, 0.1, 'A_P'),
    });
    const opinions = judgeWithoutReference([readsValue(400), readsValue(500)], two);
    expect(opinions.map(({ probably }) => probably)).toEqual(['unknown', 'unknown']);
    expect(opinions.map(({ because }) => because)).toEqual([['mate-differs'], ['mate-differs']]);
    expect(opinions.map(({ verdict }) => verdict)).toEqual(['unsure', 'unsure']);
  });

  it('should see the one pin of a line whose joint is broken or bad', () => {
    const open = board({ '11': readsNothing });
    expect(offPins(open)).toEqual(['11']);
    expect(open.get('11')).toMatchObject({ verdict: 'open', because: ['same-line-reads-less'] });
    const bad = board({ '11': readsValue(190) });
    expect(offPins(bad)).toEqual(['11']);
    expect(bad.get('11')).toMatchObject({ verdict: 'high' });
  });

  it('should call a signal near ground shorted, and ask of a supply', () => {
    expect(board({ D0_P: readsValue(0.6, 0.06) }).get('2')).toMatchObject({
      probably: 'off',
      verdict: 'short',
    });
    expect(board({ VCC: readsValue(2.4, 0.06) }).get('10')).toMatchObject({
      probably: 'off',
      verdict: 'unsure',
      because: ['shorted'],
    });
  });

  it('should see a torn ground and a spare that conducts', () => {
    expect(board({ '14': readsNothing }).get('14')).toMatchObject({ verdict: 'open' });
    expect(board({ '14': readsValue(40) }).get('14')).toMatchObject({ verdict: 'high' });
    expect(board({ SPARE: readsValue(3000) }).get('13')).toMatchObject({
      probably: 'off',
      because: ['unused-conducts'],
    });
  });

  it('should not hold it against control lines that they do not agree', () => {
    const blank = planWalk(shippedProfile('blank-24'));
    const values: Readonly<Record<string, number>> = {
      LINK_TX: 5200,
      LINK_RX: 980,
      WAKE: 31000,
      ID_0: 10000,
      ID_1: 470,
    };
    const pins = blank.pins.map(({ line }) =>
      values[line] === undefined ? unread : readsValue(values[line]),
    );
    const opinions = judgeWithoutReference(pins, blank);
    expect(opinions).toHaveLength(5);
    expect(opinions.filter(({ probably }) => probably === 'off')).toEqual([]);
  });

  it('should doubt a silent line in a group that conducts', () => {
    const plain = planOf(
      Object.fromEntries(['A', 'B', 'C', 'D'].map((line) => [line, signal('bus', null)])),
    );
    const opinions = judgeWithoutReference(
      [readsValue(400), readsValue(402), readsValue(401), readsNothing],
      plain,
    );
    expect(opinions[3]).toMatchObject({
      probably: 'off',
      verdict: 'open',
      because: ['group-conducts'],
    });
    const silent = judgeWithoutReference(
      [readsValue(400), readsNothing, readsNothing, readsNothing],
      plain,
    );
    expect(silent[3]).toMatchObject({ probably: 'unknown', because: [] });
  });
});

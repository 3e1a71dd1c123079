// What the walk says of a line, from the touch to the verdict.
import { describe, expect, it } from 'vitest';
import type { ProfileLine } from '../../../src/core/profile/profile-format.js';
import { ohms, tellStory, type WalkStory } from '../../support/walk-story.js';

const read = (line: ProfileLine, value: number): WalkStory =>
  tellStory({
    lines: [
      ['LINE', line],
      ['NEXT', ohms(5120)],
    ],
  })
    .air(0.8)
    .touch(value, 3);

const judged = (line: ProfileLine, value: number) =>
  read(line, value)
    .of('pin-judged')
    .find(({ pin }) => pin === '1');

describe('a line that should read 388 ohm within 10 %', () => {
  it.each([
    [388.4, 'normal'],
    [372.1, 'normal'],
    [300.2, 'low'],
    [470, 'high'],
    [2140, 'high'],
    [1.2, 'short'],
  ] as const)('reads %d ohm: %s, and is sure of it', (value, verdict) => {
    const found = judged(ohms(388), value);
    expect(found).toMatchObject({ verdict, line: 'LINE' });
    expect(found?.confidence).toBeGreaterThanOrEqual(0.95);
    expect(found?.advice).toBeUndefined();
  });

  it('a first touch that reads what the next pin should is named by nobody: the walk asks', () => {
    const story = read(ohms(388), 5130);
    expect(story.of('touch-captured')).toHaveLength(1);
    expect(story.of('pin-judged')).toEqual([]);
    expect(story.of('question-asked')).toMatchObject([{ question: 'same-or-next' }]);
  });

  it('near its limit the walk is unsure, and advises to touch it again', () => {
    expect(judged(ohms(388), 426.8)).toMatchObject({
      verdict: 'unsure',
      advice: 'retake',
      agreed: false,
    });
  });

  it('with a mate, the advice is to compare with it', () => {
    expect(judged(ohms(388, { mate: 'NEXT' }), 426.8)).toMatchObject({
      verdict: 'unsure',
      advice: 'compare-mate',
    });
  });

  it('at or over its own limit for open a number is open, without any overload', () => {
    const story = read(ohms(388, { limits: { open: 100_000 } }), 250_000).act('open');
    expect(story.of('pin-judged')).toMatchObject([{ pin: '1', verdict: 'open' }]);
  });
});

describe('a supply of a few ohms', () => {
  const supply = (limits: ProfileLine['limits']): ProfileLine => ({
    kind: 'supply',
    charges: false,
    expect: { resistance: { nominal: 3.4, tolerance: 0.3 } },
    ...(limits === undefined ? {} : { limits }),
  });

  it('is normal though it reads less than other lines may', () => {
    expect(judged(supply({ short: 1 }), 3.4)).toMatchObject({ verdict: 'normal' });
    expect(judged(supply(undefined), 3.4)).toMatchObject({ verdict: 'normal' });
  });

  it('is short only under its own limit', () => {
    expect(judged(supply({ short: 1 }), 0.2)).toMatchObject({ verdict: 'short' });
    expect(judged(supply({ short: 1 }), 1.7)).toMatchObject({ verdict: 'low' });
  });
});

describe('lines without an expected value', () => {
  it('a ground that reads too much is high', () => {
    expect(judged({ kind: 'ground' }, 38.2)).toMatchObject({ verdict: 'high' });
    expect(judged({ kind: 'ground' }, 0.3)).toMatchObject({ verdict: 'normal' });
  });

  it('an unused line that reads a value is not normal', () => {
    expect(judged({ kind: 'unused' }, 741)).toMatchObject({ verdict: 'low', expected: 'overload' });
  });

  it('a signal without figures can be short, and is normal otherwise', () => {
    expect(judged({ kind: 'signal' }, 1.1)).toMatchObject({ verdict: 'short', expected: null });
    expect(judged({ kind: 'signal' }, 741)).toMatchObject({ verdict: 'normal', expected: null });
  });
});

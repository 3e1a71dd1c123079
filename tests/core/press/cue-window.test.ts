import { describe, expect, it } from 'vitest';
import { type CueWindow, reduceWindow } from '../../../src/core/press/cue-window.js';
import { paceFor } from '../../../src/core/press/pace.js';
import type { Seen, Side } from '../../../src/core/press/sides.js';

/** Ten readings a second; each letter one reading, the bar the cue. n normal, a overload, b short. */
const press = (picture: string, cue: 'press' | 'release' = 'press'): CueWindow => {
  const [before = '', after = ''] = picture.replaceAll(' ', '').split('|');
  const side: Record<string, Side> = { n: 'normal', a: 'above', b: 'below' };
  const value: Record<string, number | null> = { n: 388, a: null, b: 0.4 };
  const seen = [...(before + after)].map((letter, i): Seen => {
    const t = (i + 1 - before.length) / 10;
    return { t, side: side[letter] as Side, value: value[letter] ?? null };
  });
  const window = { cue, fromS: 0.05, toS: after.length / 10 + 0.05, seen, updateS: 0.1 };
  return reduceWindow(window, paceFor(0.1));
};

describe('reduceWindow', () => {
  it.each([
    ['answers', 'aaaaaa|aaannnnnnnnnnn', { side: 'normal', locked: true, value: 388 }],
    ['stays', 'aaaaaa|aaaaaaaaaaaaaa', { side: 'above', locked: false, overload: true }],
    ['was there before', 'nnnnnn|nnnnnnnnnnnnnn', { side: 'normal', locked: false }],
    ['came just before the cue', 'aaaaan|nnnnnnnnnnnnnn', { side: 'normal', locked: false }],
    ['answers too late', 'aaaaaa|aaaaaaaaaaaaannnnnn', { side: 'normal', locked: false }],
    ['bounces as it closes', 'aaaaaa|aaannannnnnnnnn', { side: 'normal', locked: true }],
    ['bounces while held', 'aaaaaa|aaannnnnnannnnn', { side: 'normal', locked: true }],
    ['slips while held', 'aaaaaa|aaannnnnaaaannnnnnn', { side: 'normal', locked: true }],
    ['slips across the cue', 'nnnnaa|aannnbbbbbbbbbb', { side: 'below', locked: true }],
    ['slips as the window ends', 'aaaaaa|aaannnnnnnnnaa', { side: 'normal', locked: true }],
    ['answers and lets go', 'aaaaaa|aaannnnnaaaaaaa', { side: null, locked: false }],
    ['will not hold still', 'aaaaaa|aaannaabbnnaabb', { side: null, locked: false }],
    ['chatters', 'aaaaaa|aaananananananananan', { side: null, locked: false }],
    ['is short', 'nnnnnn|nnnbbbbbbbbbb', { side: 'below', locked: true, value: 0.4 }],
    ['ends too soon', 'aaaaaa|aaann', { side: null }],
    ['has no readings', '|', { side: null, answerS: null }],
  ] as const)('a line that %s', (_, picture, expected) => {
    expect(press(picture)).toMatchObject(expected);
  });

  it('gives a release time to stick', () => {
    const sticky = 'nnnnnn|nnnnnnnnnnnnnnaaaaaa';
    expect(press(sticky, 'release')).toMatchObject({ side: 'above', locked: true });
    expect(press(sticky, 'press').locked).toBe(false);
  });

  it('tells the time from the cue to the first reading of the answer', () => {
    expect(press('aaaaaa|aaannnnnnnnnnn').answerS).toBeCloseTo(0.35, 12);
  });

  it('leaves the first, still settling value out of the median', () => {
    const settling: Seen[] = [
      { t: -0.1, side: 'above', value: null },
      ...[480, 400, 390, 390, 390].map(
        (value, i): Seen => ({ t: 0.3 + i / 10, side: 'normal', value }),
      ),
    ];
    const window = { cue: 'press', fromS: 0, toS: 0.8, seen: settling, updateS: 0.1 } as const;
    expect(reduceWindow(window, paceFor(0.1)).value).toBe(390);
  });
});

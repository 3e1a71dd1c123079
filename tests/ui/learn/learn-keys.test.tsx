import { describe, expect, it } from 'vitest';
import { screenActs } from '../../../src/core/words/screen-words.js';
import { keyMapWith } from '../../../src/ui/keys/key-map.js';
import {
  beginLearning,
  isLearnt,
  type Learning,
  learnKey,
} from '../../../src/ui/learn/learn-keys.js';
import { LearnScreen } from '../../../src/ui/learn/learn-screen.js';
import { show } from '../support/show.js';

const press = (...names: readonly string[]): Learning =>
  names.reduce((learning, name) => learnKey(learning, { name, text: '' }), beginLearning);

describe('learning keys', () => {
  it('should bind each act to what is pressed, and keep what enter keeps', () => {
    const { learnt, at } = press('f5', 'enter', 'seq:1b5b39397e');
    expect(learnt).toEqual({ open: ['f5'], back: ['seq:1b5b39397e'] });
    expect(at).toBe(3);
  });

  it('should give a map that works', () => {
    const map = keyMapWith(press('f5', 'n', 'escape').learnt);
    expect([map.open, map.next, map.back]).toEqual([['f5'], ['n'], ['b', 'left']]);
  });

  it('should refuse a key that is taken, or that is none', () => {
    expect(press('f5', 'f5')).toMatchObject({ at: 1, refused: { why: 'taken', by: 'open' } });
    expect(press('paste')).toMatchObject({ at: 0, refused: { why: 'never' } });
    expect(press('f5', 'f5', 'f6').refused).toBeNull();
  });

  it('should end with escape or after the last act', () => {
    expect(isLearnt(press('f5', 'escape'))).toBe(true);
    expect(isLearnt(press(...screenActs.map(() => 'enter')))).toBe(true);
    expect(isLearnt(press(...screenActs.slice(1).map(() => 'enter')))).toBe(false);
  });

  it('should show what is asked for and what was refused, at any height', () => {
    for (const height of [9, 23]) {
      const rows = show(<LearnScreen learning={press('f5', 'f5')} width={80} height={height} />);
      expect(rows.length).toBeLessThanOrEqual(height);
      const text = rows.join('\n');
      expect(text).toContain('Press the key or pedal for: take the pin as it was read, go on');
      expect(text).toContain('"f5" is taken: the line at this pin is open');
    }
  });
});

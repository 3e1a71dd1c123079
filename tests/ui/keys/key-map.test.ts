import { describe, expect, it } from 'vitest';
import { screenActs } from '../../../src/core/words/screen-words.js';
import { actOfKey, keyMapWith, shownKey, usualKeys } from '../../../src/ui/keys/key-map.js';

describe('key map', () => {
  it('should bind every act and no key twice', () => {
    const names = screenActs.flatMap((act) => usualKeys[act]);
    expect(screenActs.every((act) => usualKeys[act].length > 0)).toBe(true);
    expect(new Set(names).size).toBe(names.length);
  });

  it('should bind escape to nothing', () => {
    expect(actOfKey(keyMapWith({}), 'escape')).toBeNull();
    expect(() => keyMapWith({ quit: ['escape'] })).toThrow(/cannot be bound/u);
  });

  it('should move a key to the act it is given to', () => {
    const map = keyMapWith({ open: ['f5', 'n'] });
    expect(actOfKey(map, 'f5')).toBe('open');
    expect(actOfKey(map, 'n')).toBe('open');
    expect(actOfKey(map, 'enter')).toBe('next');
    expect(actOfKey(map, 'o')).toBeNull();
    expect(shownKey(map, 'next')).toBe('enter');
  });

  it('should refuse what would not work, in words', () => {
    expect(() => keyMapWith({ opne: ['x'] })).toThrow(/no act "opne"/u);
    expect(() => keyMapWith({ open: ['x'], next: ['x'] })).toThrow(/given to open and to next/u);
    expect(() => keyMapWith({ quit: [] })).toThrow(/quit/u);
    expect(() => keyMapWith({ open: ['q', 'ctrl+c'] })).toThrow(/quit/u);
  });
});

// Pin names as they are spoken.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spokenPin } from '../../../src/core/cues/spoken-pin.js';
import { englishSpoken } from '../../../src/core/words/english-spoken.js';
import { anyText } from './any-text.js';

describe('spokenPin', () => {
  it.each([
    ['1', 'one'],
    ['7', 'seven'],
    ['12', 'twelve'],
    ['21', 'twenty-one'],
    ['40', 'forty'],
    ['100', 'one hundred'],
    ['115', 'one hundred and fifteen'],
    ['240', 'two hundred and forty'],
    ['1024', 'one-zero-two-four'],
    ['007', 'zero-zero-seven'],
    ['0', 'zero'],
    ['A12', 'A-twelve'],
    ['b7', 'B-seven'],
    ['CN1.4', 'C-N-one-dot-four'],
    ['D0_P', 'D-zero-underscore-P'],
    ['V+', 'V-plus'],
    ['', 'this pin'],
    ['\u202e\u0000', 'this pin'],
  ])('should say %j as %j', (pin, spoken) => {
    expect(spokenPin(pin, englishSpoken)).toBe(spoken);
  });

  it('should tell every number up to 999 from every other', () => {
    const said = new Set(Array.from({ length: 1000 }, (_, n) => spokenPin(`${n}`, englishSpoken)));
    expect(said.size).toBe(1000);
    expect([...said].filter((text) => !/^[a-z -]+$/u.test(text))).toEqual([]);
  });

  it('should say something short and plain of any name', () => {
    fc.assert(
      fc.property(anyText(60), (pin) => {
        expect(spokenPin(pin, englishSpoken)).toMatch(/^[A-Za-z][A-Za-z -]{0,300}$/u);
      }),
      { seed: 5 },
    );
  });
});

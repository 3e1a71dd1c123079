// What may reach a voice: whatever the text, it can be no option, no markup and no escape.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { speakable } from '../../../src/core/cues/speakable.js';
import { anyText } from './any-text.js';

describe('speakable', () => {
  it.each([
    ['seven, normal', 'seven, normal'],
    ['eight: open?', 'eight: open?'],
    ["the probe's tip; again", "the probe's tip; again"],
    ['--version', 'version'],
    ['[[reset]] now', 'reset now'],
    ['<break time="9s"/>', 'break time 9s'],
    ['$(halt) `halt` | halt & halt', 'halt halt halt halt'],
    ['a\u001b[2Jb\u202ec\nd', 'a 2Jb c d'],
    ['größer als пять', 'größer als пять'],
    ['...', ''],
  ])('should make of %j %j', (text, spoken) => {
    expect(speakable(text)).toBe(spoken);
  });

  it('should begin with a letter or digit, hold plain characters only and end early', () => {
    fc.assert(
      fc.property(anyText(400), (text) => {
        expect(speakable(text)).toMatch(/^(?:[\p{L}\p{N}][\p{L}\p{M}\p{N},.:;?' -]{0,159})?$/u);
        expect(speakable(speakable(text))).toBe(speakable(text));
      }),
      { seed: 3, numRuns: 500 },
    );
    expect(speakable('ab '.repeat(5000))).toHaveLength(160);
  });
});

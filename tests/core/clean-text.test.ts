// Hostile text must become harmless and visible; honest text in any script must stay as it is.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanText } from '../../src/core/clean-text.js';

const clean = (text: string): string => cleanText(text, 200);

describe('cleanText', () => {
  it.each([
    ['an escape sequence', '\u001b[31mhot\u001b[0m', '␛[31mhot␛[0m'],
    ['a window title', '\u001b]0;x\u0007', '␛]0;x␇'],
    ['line ends and tabs', 'a\r\n\tb', 'a␍␊␉b'],
    ['NUL and DEL', '\u0000\u007f', '␀␡'],
    ['C1 controls, which some terminals obey', '\u009b31m\u0085', '\ufffd31m\ufffd'],
    ['direction overrides', 'ab\u202edc\u202c', 'ab\ufffddc\ufffd'],
    ['direction isolates', '\u2066a\u2069\u2067b\u2068', '\ufffda\ufffd\ufffdb\ufffd'],
    ['direction marks', 'a\u200e\u200f\u061cb', 'a\ufffd\ufffd\ufffdb'],
    [
      'zero-width characters',
      'pa\u200bss\u2060wo\ufeffrd\u00ad',
      'pa\ufffdss\ufffdwo\ufffdrd\ufffd',
    ],
    ['joiners between Latin letters', 'a\u200cb\u200dc', 'a\ufffdb\ufffdc'],
    ['line and paragraph separators', 'a\u2028b\u2029c', 'a\ufffdb\ufffdc'],
    ['lone surrogates', 'a\ud83db\ude00', 'a\ufffdb\ufffd'],
    ['noncharacters and annotations', '\ufffe\ufff9x\ufffb', '\ufffd\ufffdx\ufffd'],
    ['tag characters', 'a\u{e0041}\u{e007f}', 'a\ufffd\ufffd'],
    ['invisible fillers', 'a\u3164\u115fb', 'a\ufffd\ufffdb'],
  ])('should show %s', (_, hostile, shown) => {
    expect(clean(hostile)).toBe(shown);
  });

  it.each([
    ['Arabic', 'مقاومة ٣٨٩٫٦ أوم'],
    ['Arabic number sign', '\u0600١٢'],
    ['Persian with joiners', 'می\u200cروم'],
    ['Hindi with joiners', 'क्\u200dष'],
    ['Hebrew with points', 'הִתְנַגְּדוּת'],
    ['Chinese', '电阻'],
    ['Thai', 'ความต้านทาน'],
    ['Vietnamese in combining marks', 'điện trở'.normalize('NFD')],
    ['units and pictographs', '389.6 kΩ ±5 % µV 🔧 ⚠\ufe0f'],
  ])('should leave %s as it is', (_, honest) => {
    expect(clean(honest)).toBe(honest);
  });

  it('should cut a tower of combining marks', () => {
    expect(clean(`a${'\u0301'.repeat(50)}b`)).toBe(`a${'\u0301'.repeat(6)}\ufffdb`);
  });

  it('should mark a cut with one character and never split a pair', () => {
    expect(cleanText('abcdef', 6)).toBe('abcdef');
    expect(cleanText('abcdefg', 6)).toBe('abcde…');
    expect(cleanText('🔧🔧🔧', 3)).toBe('🔧🔧🔧');
    expect(cleanText('🔧🔧🔧🔧', 3)).toBe('🔧🔧…');
    expect(cleanText('ab', 1)).toBe('…');
    expect(cleanText('می\u200cروم', 4)).toBe('می…');
  });

  it('should cut a huge text', () => {
    expect(cleanText('\u202e'.repeat(5_000_000), 10)).toBe(`${'\ufffd'.repeat(9)}…`);
  });

  it.each([0, -1, 1.5, Number.NaN])('should refuse the length %s', (length) => {
    expect(() => cleanText('a', length)).toThrow(RangeError);
  });

  it('should be harmless, short and stable for any text', () => {
    const anyText = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc
        .array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 60 })
        .map((units) => String.fromCharCode(...units)),
      fc.string({
        unit: fc.constantFrom('\u001b', '[', '\u202e', '\u200d', 'ك', 'a', '\u0301', '⚠', '\ufe0f'),
      }),
    );
    fc.assert(
      fc.property(anyText, fc.integer({ min: 1, max: 50 }), (text, maxLength) => {
        const cleaned = cleanText(text, maxLength);
        expect(cleaned).not.toMatch(
          /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\p{Bidi_Control}\u200b\u2060\ufeff]/u,
        );
        expect(Array.from(cleaned).length).toBeLessThanOrEqual(maxLength);
        expect(cleanText(cleaned, maxLength)).toBe(cleaned);
      }),
      { seed: 20260131, numRuns: 2000 },
    );
  });
});

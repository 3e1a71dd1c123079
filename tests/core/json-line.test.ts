import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonLine } from '../../src/core/json-line.js';

describe('jsonLine', () => {
  it('should write as escapes what acts or hides, and leave the rest', () => {
    expect(jsonLine({ a: '\u009b31m\u202e\u{e0041}\ufeff' })).toBe(
      '{"a":"\\u009b31m\\u202e\\udb40\\udc41\\ufeff"}',
    );
    expect(jsonLine({ a: '389.6 kΩ زجاج 🔧' })).toBe('{"a":"389.6 kΩ زجاج 🔧"}');
  });

  it('should read back as the same for any value', () => {
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: 'binary' }), (value) => {
        const line = jsonLine({ value });
        expect(JSON.parse(line)).toEqual(JSON.parse(JSON.stringify({ value })));
        expect(line).not.toMatch(/[\p{Cc}\p{Bidi_Control}\p{Zl}\p{Zp}\u200b\u2060\ufeff]/u);
      }),
      { seed: 7, numRuns: 500 },
    );
  });
});

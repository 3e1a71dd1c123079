import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesOf, textOf } from '../../../src/core/meter/wire-text.js';

describe('textOf and bytesOf', () => {
  it('should keep every byte of latin1, the micro sign included', () => {
    const all = Uint8Array.from({ length: 256 }, (_, byte) => byte);
    expect(textOf(Uint8Array.of(0xb5), 'latin1')).toBe('µ');
    expect(bytesOf(textOf(all, 'latin1'), 'latin1')).toEqual(all);
  });

  it('should not guess at bytes the encoding does not have', () => {
    expect(textOf(Uint8Array.of(0x31, 0x80, 0xff), 'ascii')).toBe('1\ufffd\ufffd');
    expect(textOf(Uint8Array.of(0x31, 0xb5), 'utf8')).toBe('1\ufffd');
  });

  it('should send a question mark for what the encoding cannot say', () => {
    expect(bytesOf('1Ω', 'latin1')).toEqual(Uint8Array.of(0x31, 0x3f));
    expect(bytesOf('1µ', 'ascii')).toEqual(Uint8Array.of(0x31, 0x3f));
    expect(bytesOf('🔧', 'ascii')).toEqual(Uint8Array.of(0x3f));
  });

  it('should give back any text its encoding has', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(textOf(bytesOf(text, 'utf8'), 'utf8')).toBe(text.replace(/^\ufeff/u, ''));
      }),
      { seed: 20260131 },
    );
  });
});

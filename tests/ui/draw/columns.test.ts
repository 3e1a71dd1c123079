import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { columnsOf } from '../../../src/ui/draw/columns.js';

describe('columns of a text', () => {
  it('should be what the library counts, the first time and later', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(columnsOf(text)).toBe(stringWidth(text));
        expect(columnsOf(text)).toBe(stringWidth(text));
      }),
    );
  });

  it('should stay right when more texts come than are remembered', () => {
    for (let n = 0; n < 10_000; n += 1) expect(columnsOf(`${n} Ω`)).toBe(String(n).length + 2);
  });
});

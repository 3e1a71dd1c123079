// Any text at all, with the characters that do harm well represented.
import fc from 'fast-check';

const codePoint = fc.oneof(
  fc.integer({ min: 0, max: 0x7f }),
  fc.integer({ min: 0x80, max: 0xffff }),
  fc.integer({ min: 0x10000, max: 0x10ffff }),
);

export const anyText = (maxLength: number): fc.Arbitrary<string> =>
  fc.string({ unit: codePoint.map((point) => String.fromCodePoint(point)), maxLength });

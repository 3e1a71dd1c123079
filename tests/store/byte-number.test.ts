// Numbers out of bytes are the numbers that JSON.parse gives.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ByteNumber } from '../../src/store/byte-number.js';

/** As a line holds it: something follows. */
const readIn = (text: string): { readonly value: number; readonly end: number } => {
  const number = new ByteNumber();
  const value = number.read(Buffer.from(`ab${text},"t":`), 2);
  return { value, end: number.end };
};

const expectAsParsed = (text: string): void => {
  expect(readIn(text)).toEqual({ value: JSON.parse(text), end: 2 + text.length });
};

const digits = fc.stringMatching(/^\d{0,20}$/u);
const written = fc
  .tuple(fc.constantFrom('', '-'), fc.stringMatching(/^(0|[1-9]\d{0,20})$/u), digits)
  .map(([sign, whole, decimals]) => `${sign}${whole}${decimals === '' ? '' : `.${decimals}`}`);

describe('a number in bytes', () => {
  it('should be what JSON.parse gives, to the last bit, for any number as it is stored', () => {
    const finite = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(
        finite.map((value) => JSON.stringify(value)),
        expectAsParsed,
      ),
      { seed: 7, numRuns: 3000 },
    );
  });

  it('should be what JSON.parse gives for any decimals, however many', () => {
    fc.assert(fc.property(written, expectAsParsed), { seed: 7, numRuns: 3000 });
  });

  it.each([
    '0',
    '-0',
    '0.1',
    '383.87',
    '9783.340000000018',
    '1e-7',
    '-2.5E+21',
    '123456789012345.6',
  ])('should read %s', (text) => expectAsParsed(text));

  it.each(['', '-', '.5', '1.', '-.5', '01', '00', '-01.5', '1e', '1e+', '+1', 'x', '1.e5', '--1'])(
    'should refuse %s as JSON does',
    (text) => {
      expect(() => JSON.parse(text)).toThrow(SyntaxError);
      expect(readIn(text).value).toBeNaN();
    },
  );

  it('should stop at the end of the bytes', () => {
    expect(new ByteNumber().read(Buffer.from('12'), 0)).toBe(12);
    expect(new ByteNumber().read(Buffer.from('12'), 2)).toBeNaN();
  });
});

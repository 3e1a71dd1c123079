import { describe, expect, it } from 'vitest';
import { numberText } from '../../../src/core/meter/number-text.js';

const decimal = { notation: 'decimal', plus: '' } as const;

describe('numberText', () => {
  it.each([
    [3896, 0.1, '389.6'],
    [1234, 0.001, '1.234'],
    [-3, 0.1, '-0.3'],
    [0, 0.01, '0.00'],
    [-0.4, 0.1, '0.0'],
    [470, 1, '470'],
    [12, 10, '120'],
    [7, 0.25, '1.75'],
  ])('should print %s steps of %s as %s', (steps, step, text) => {
    expect(numberText(steps, step, decimal)).toBe(text);
  });

  it('should print exponents as NR3 with two digits or more', () => {
    const form = { notation: 'exponent', plus: '+', digits: 8 } as const;
    expect(numberText(38960, 0.01, form)).toBe('+3.89600000E+02');
    expect(numberText(-12, 0.0001, form)).toBe('-1.20000000E-03');
    expect(numberText(0, 0.0001, form)).toBe('+0.00000000E+00');
  });

  it('should print the display counts themselves', () => {
    const form = { notation: 'counts', plus: '+', width: 7, fill: 'zeros' } as const;
    expect(numberText(12345, 0.1, form)).toBe('+012345');
    expect(numberText(-12, 0.1, form)).toBe('-000012');
  });

  it('should fill before or after the sign', () => {
    expect(numberText(-3, 0.1, { ...decimal, width: 7 })).toBe('   -0.3');
    expect(numberText(-3, 0.1, { ...decimal, width: 7, fill: 'blanks-after-sign' })).toBe(
      '-   0.3',
    );
    expect(numberText(3, 0.1, { ...decimal, plus: ' ', width: 7, fill: 'zeros' })).toBe(' 0000.3');
  });

  it('should print a decimal comma', () => {
    expect(numberText(1234, 0.001, decimal, ',')).toBe('1,234');
  });

  it('should refuse what no display can show', () => {
    expect(() => numberText(1, 0, decimal)).toThrow(RangeError);
    expect(() => numberText(Number.NaN, 1, decimal)).toThrow(RangeError);
    expect(() => numberText(Number.POSITIVE_INFINITY, 1, decimal)).toThrow(RangeError);
  });
});

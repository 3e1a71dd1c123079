// Numbers as instruments write them. Forms and inputs: Agilent E4350B/E4351B manual p. 53, Table 2-1 (seen);
// length limits: Agilent 53131A/132A Programming Guide p. 3-17, Table 3-3 (seen).
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  digitStep,
  numberValue,
  parseNrf,
  plainNumber,
  readNumber,
  type WrittenNumber,
} from '../../../src/core/meter/number-forms.js';

const written = (text: string): WrittenNumber => {
  const number = readNumber(text);
  if (!number) throw new Error(`${text} should be a number`);
  return number;
};

describe('readNumber', () => {
  it.each([
    ['273', 'NR1', 273],
    ['0273', 'NR1', 273],
    ['273.', 'NR2', 273],
    ['.0273', 'NR2', 0.0273],
    ['2.73E+2', 'NR3', 273],
    ['273.0E-2', 'NR3', 2.73],
    ['2.73E2', 'NR3', 273],
    ['+9.90000000E+37', 'NR3', 9.9e37],
    ['-1234567890123456', 'NR1', -1234567890123456],
    ['-123456789012345.', 'NR2', -123456789012345],
    ['-1.23456789012345E-100', 'NR3', -1.23456789012345e-100],
  ])('should take %s for %s', (text, form, value) => {
    expect(readNumber(text)?.form).toBe(form);
    expect(parseNrf(text)).toBe(value);
  });

  it.each([
    '',
    ' ',
    '.',
    '+',
    '-',
    'E2',
    '.E2',
    '1E',
    '1E+',
    '1.2.3',
    '+2.09.99E+0',
    '--1',
    '+-1',
    '1 2',
    ' 1',
    '1 ',
    '- 1',
    '1,5',
    '0x10',
    '1e2.5',
    'NaN',
    'Infinity',
    '1_000',
    '٣٨٩',
    '1E99999',
    '1\n',
  ])('should refuse %j', (text) => {
    expect(readNumber(text)).toBeNull();
    expect(parseNrf(text)).toBeNull();
  });

  it('should read back any finite number, however it is printed', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(parseNrf(String(value).toUpperCase())).toBe(value === 0 ? 0 : value);
        expect(parseNrf(value.toExponential())).toBe(value === 0 ? 0 : value);
      }),
      { seed: 20260131 },
    );
  });

  it('should refuse in linear time what is almost a number', () => {
    expect(readNumber(`${'1'.repeat(200_000)}x`)).toBeNull();
  });
});

describe('numberValue', () => {
  it('should apply a power of ten without rounding twice', () => {
    expect(4.35 * 100).not.toBe(435);
    expect(numberValue(written('4.35'), 100)).toBe(435);
    expect(numberValue(written('4.35'), 1e3)).toBe(4350);
    expect(numberValue(written('512.3'), 1e-3)).toBe(0.5123);
    expect(numberValue(written('-1.5'), 1e6, 1e-3)).toBe(-1500);
  });

  it('should apply any other factor too', () => {
    expect(numberValue(written('1.5'), 2.5, 10)).toBe(37.5);
  });

  it('should never give a negative zero', () => {
    expect(Object.is(parseNrf('-0.000'), 0)).toBe(true);
  });
});

describe('digitStep', () => {
  it.each([
    ['389.6', 1, 0.1],
    ['1.234', 1e3, 1],
    ['47', 1e6, 1e6],
    ['273.', 1, 1],
    ['.0273', 1e-3, 1e-7],
    ['2.73E+2', 1, 1],
  ])('should find the last digit of %s times %s', (text, factor, step) => {
    expect(digitStep(written(text), factor)).toBe(step);
  });
});

// Blanks between sign and digits: Hioki BT3562 manual p. 150 (seen).
describe('plainNumber', () => {
  it('should close up blanks after the sign only where the driver says so', () => {
    expect(plainNumber('-   7.51E+0', { blanksAfterSign: true })).toBe('-7.51E+0');
    expect(parseNrf(plainNumber('-   7.51E+0', undefined))).toBeNull();
    expect(parseNrf(plainNumber('7. 51', { blanksAfterSign: true }))).toBeNull();
    expect(plainNumber('  7.51 ', undefined)).toBe('7.51');
  });

  it('should take a decimal comma only where the driver says so', () => {
    expect(parseNrf(plainNumber('1,234', { decimalMark: ',' }))).toBe(1.234);
    expect(parseNrf(plainNumber('1.234', { decimalMark: ',' }))).toBeNull();
    expect(parseNrf(plainNumber('1,2,3', { decimalMark: ',' }))).toBeNull();
    expect(parseNrf(plainNumber('1,234', undefined))).toBeNull();
  });
});

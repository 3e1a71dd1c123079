// Suffix multipliers: IEEE 488.2 Table 7-2 and SCPI-1999, read in Agilent 53131A guide Table 3-2 and Agilent
// 53150A guide p. 3-18 (seen at second hand), with the same tables' exception for MOHM and MHZ.
import { describe, expect, it } from 'vitest';
import { parseSuffixed } from '../../../src/core/meter/suffix.js';

describe('parseSuffixed', () => {
  it.each([
    ['EX', 1e18],
    ['PE', 1e15],
    ['T', 1e12],
    ['G', 1e9],
    ['MA', 1e6],
    ['K', 1e3],
    ['M', 1e-3],
    ['U', 1e-6],
    ['N', 1e-9],
    ['P', 1e-12],
    ['F', 1e-15],
    ['A', 1e-18],
  ])('should take %sV for %s volt', (multiplier, value) => {
    expect(parseSuffixed(`1 ${multiplier}V`)).toEqual({ value, unit: 'V' });
  });

  it.each([
    ['1 MOHM', 1e6, 'OHM'],
    ['1 MAOHM', 1e6, 'OHM'],
    ['1 MHZ', 1e6, 'HZ'],
    ['1 MAHZ', 1e6, 'HZ'],
    ['1 MV', 1e-3, 'V'],
    // Agilent E4350B Table 2-2 lists MA as milliampere (seen).
    ['1 MA', 1e-3, 'A'],
    ['1 MS', 1e-3, 'S'],
    ['10 KOHM', 1e4, 'OHM'],
    ['100', 100, ''],
  ])('should read %s', (text, value, unit) => {
    expect(parseSuffixed(text)).toEqual({ value, unit });
  });

  // Agilent 86120B/C manual, syntax rules (seen).
  it.each(['28', '0.28E2', '280E-1', '28000m', '0.028K', '28E-3K'])(
    'should read %s as 28',
    (text) => {
      expect(parseSuffixed(text)).toEqual({ value: 28, unit: '' });
    },
  );

  it.each(['', 'OHM', '1 X', '1 KK', '1 OHMS', '1..2 V', '1 K OHM', '1 constructor'])(
    'should refuse %j',
    (text) => {
      expect(parseSuffixed(text)).toBeNull();
    },
  );
});

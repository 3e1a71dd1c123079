// Figures that stand for no number. Infinity 9.9E37 and not-a-number 9.91E37: SCPI-1999 volume 1, 7.2.1.4 and
// 7.2.1.5 (clauses from memory); values read in a Keysight article on overload, the Anritsu SCPI data-type table,
// Agilent 53131A guide Table 3-3 and N1911A guide p. 75 (seen at second hand).
import { describe, expect, it } from 'vitest';
import { kindOfMagnitude } from '../../../src/core/meter/magnitude.js';

describe('kindOfMagnitude', () => {
  it.each([9.8e37, 9.9e37, 9.91e37, 9.99e37])('should never take %s for a value', (magnitude) => {
    expect(kindOfMagnitude(magnitude, {})).toBe('overload');
    expect(kindOfMagnitude(magnitude, { faultAtLeast: 1e10 })).toBe('overload');
  });

  // The Keysight article on the N6781A: 9.91E37 on an overloaded range (seen).
  it('should take not-a-number for a blank only where the driver says so', () => {
    expect(kindOfMagnitude(9.91e37, { notANumberIsBlank: true })).toBe('blank');
    expect(kindOfMagnitude(9.9e37, { notANumberIsBlank: true })).toBe('overload');
  });

  // Hioki BT3562 manual p. 150: 10.0000E+8 and 100.000E+7 for overflow, 10.0000E+9 and 100.000E+8 for a
  // failed measurement (seen).
  it.each([
    [3.1e6, 'value'],
    [10.0e8, 'overload'],
    [100.0e7, 'overload'],
    [10.0e9, 'failed'],
    [100.0e8, 'failed'],
  ])('should follow a driver with figures of its own: %s', (magnitude, kind) => {
    expect(kindOfMagnitude(magnitude, { atLeast: 1e9, faultAtLeast: 1e10 })).toBe(kind);
  });

  it('should leave ordinary and absurd figures to others', () => {
    expect(kindOfMagnitude(0, {})).toBe('value');
    expect(kindOfMagnitude(9.79e37, {})).toBe('value');
    expect(kindOfMagnitude(1e38, {})).toBe('value');
    expect(kindOfMagnitude(Number.POSITIVE_INFINITY, {})).toBe('value');
  });
});

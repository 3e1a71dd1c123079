import { describe, expect, it } from 'vitest';
import { readNotedValue } from '../../../src/core/learn/noted-value.js';

describe('readNotedValue in resistance', () => {
  it.each<[string, string, number]>([
    ['389.6', '', 389.6],
    [' 389.6 ', '', 389.6],
    ['0', '', 0],
    ['4.7k', '', 4700],
    ['4.7 kΩ', '', 4700],
    ['4k7', '', 4700],
    ['470R', '', 470],
    ['R47', '', 0.47],
    ['10k', '', 10_000],
    ['2M2', '', 2.2e6],
    ['1.2M', '', 1.2e6],
    ['1 MOHM', '', 1e6],
    ['3.4 ohms', '', 3.4],
    ['470 \u2126', '', 470],
    ['470m', '', 0.47],
    ['3.9E3', '', 3900],
    ['4.7', 'kΩ', 4700],
    ['4.7', 'kohm', 4700],
    ['4.7k', 'kΩ', 4700],
    ['470', 'Ω', 470],
  ])('should read %j with unit %j as %f Ω', (text, unit, ohms) => {
    expect(readNotedValue(text, unit, 'resistance')).toEqual({ noted: 'value', value: ohms });
  });

  it.each(['OL', 'ol', 'O.L', 'O.L.', 'overload', 'Open'])('should read %j as overload', (text) => {
    expect(readNotedValue(text, '', 'resistance')).toEqual({ noted: 'overload' });
  });

  it('should read nothing as not measured', () => {
    expect(readNotedValue('  ', 'Ω', 'resistance')).toEqual({ noted: 'nothing' });
  });

  it.each<[string, string, string]>([
    ['4,7', '', 'decimal comma'],
    ['1,200', '', 'decimal comma'],
    ['about 390', '', 'no value'],
    ['390?', '', 'no value'],
    ['1.2.3', '', 'no value'],
    ['-5', '', '0 or more'],
    ['0.47 V', '', 'does not fit resistance'],
    ['470', 'mV', 'does not fit resistance'],
    ['470', 'furlong', 'unit is not known'],
    ['4.7 kiloohm', '', 'unit is not known'],
    ['4.7k', 'MΩ', 'two units'],
    ['1e99', 'constructor', 'unit is not known'],
    ['\u001b[31m47', '', 'no value'],
  ])('should refuse %j with unit %j', (text, unit, what) => {
    const noted = readNotedValue(text, unit, 'resistance');
    expect(noted.noted).toBe('wrong');
    if (noted.noted === 'wrong') {
      expect(noted.what).toContain(what);
      expect(noted.fix).not.toBe('');
    }
  });
});

describe('readNotedValue in diode test', () => {
  it.each<[string, string, number]>([
    ['0.47', '', 0.47],
    ['.47V', '', 0.47],
    ['470mV', '', 0.47],
    ['470', 'mV', 0.47],
    ['0.512', 'V', 0.512],
  ])('should read %j with unit %j as %f V', (text, unit, volts) => {
    const noted = readNotedValue(text, unit, 'diode');
    expect(noted).toEqual({ noted: 'value', value: expect.closeTo(volts, 12) });
  });

  it('should not guess that a bare 470 is in millivolt', () => {
    // Common practice, no source: notes of diode drops often leave the unit out.
    expect(readNotedValue('470', '', 'diode')).toMatchObject({
      noted: 'wrong',
      what: 'no junction drops so many volts',
    });
  });

  it('should refuse ohms', () => {
    expect(readNotedValue('4k7', '', 'diode')).toMatchObject({ noted: 'wrong' });
    expect(readNotedValue('470', 'Ω', 'diode')).toMatchObject({ noted: 'wrong' });
  });
});

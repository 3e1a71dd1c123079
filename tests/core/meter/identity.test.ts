// Answers to `*IDN?`. Four fields: IEEE 488.2, 10.14 and SCPI-1999, 4.1.3.6, quoted in public SCPI library
// documents (seen at second hand); `0` for a field without data: IEEE 488.2, 10.14.3 (from memory); quoted first
// field: Keysight E5080B help, Common Commands (seen).
import { describe, expect, it } from 'vitest';
import { parseIdentity } from '../../../src/core/meter/identity.js';

describe('parseIdentity', () => {
  it('should read the four fields', () => {
    expect(parseIdentity('ACME,DMM-1,0,1.02-01-03')).toEqual({
      maker: 'ACME',
      model: 'DMM-1',
      serial: null,
      firmware: '1.02-01-03',
    });
    expect(parseIdentity('ACME, DMM-1 ,SN 7,1.0\r')?.serial).toBe('SN 7');
  });

  it('should survive a fifth comma', () => {
    expect(parseIdentity('ACME,DMM-1,0,1.02,03,04')?.firmware).toBe('1.02,03,04');
  });

  it('should take quotes off, with commas and doubled quotes inside', () => {
    expect(parseIdentity('"ACME Meters, Ltd",DMM-1,7,1.0')?.maker).toBe('ACME Meters, Ltd');
    expect(parseIdentity('"ACME ""A""",DMM-1,7,1.0')?.maker).toBe('ACME "A"');
  });

  it('should do with fewer fields', () => {
    expect(parseIdentity('ACME,DMM-1')).toEqual({
      maker: 'ACME',
      model: 'DMM-1',
      serial: null,
      firmware: null,
    });
    expect(parseIdentity('ACME,DMM-1,,1.0')).toMatchObject({ serial: null, firmware: '1.0' });
  });

  it('should clean what the far end sends', () => {
    expect(parseIdentity('AC\u001b[31mME,DMM\u202e-1,0,0')).toMatchObject({
      maker: 'AC␛[31mME',
      model: 'DMM\ufffd-1',
    });
    expect(parseIdentity(`${'A'.repeat(500)},B,0,0`)?.maker).toHaveLength(72);
  });

  it.each([
    '',
    'ACME',
    ',DMM-1,0,0',
    'ACME,,0,0',
    '"",X',
    '+3.896E+02',
    '+1.0E+0,+2.0E+0',
    '0,"No error"',
    ',,,',
  ])('should refuse %j', (text) => {
    expect(parseIdentity(text)).toBeNull();
  });
});

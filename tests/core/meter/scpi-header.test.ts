// Long and short forms of mnemonics: SCPI-1999 volume 1, 6.2.1 (clause from memory).
import { describe, expect, it } from 'vitest';
import { readMessage, shortForm, splitMessages } from '../../../src/core/meter/scpi-header.js';

describe('shortForm', () => {
  it.each([
    ['MEASure', 'MEAS'],
    ['RESistance', 'RES'],
    ['FETCh', 'FETC'],
    ['INITiate', 'INIT'],
    ['FUNCtion', 'FUNC'],
    ['DIODe', 'DIOD'],
    ['VOLTage', 'VOLT'],
    ['ERRor', 'ERR'],
    ['RANGe', 'RANG'],
    ['READ', 'READ'],
    ['AUTO', 'AUTO'],
    ['DC', 'DC'],
    ['TRIGger2', 'TRIG2'],
    ['res', 'RES'],
  ])('should shorten %s to %s', (long, short) => {
    expect(shortForm(long)).toBe(short);
  });
});

describe('readMessage', () => {
  it('should take spellings of one message for the same', () => {
    const expected = { header: 'MEAS:RES?', parameters: '' };
    for (const text of ['MEAS:RES?', ':MEASure:RESistance?', ' meas:res? ', 'Measure:Res?']) {
      expect(readMessage(text)).toEqual(expected);
    }
    expect(readMessage("FUNC 'res'")).toEqual(readMessage('FUNCtion  "RES"'));
    expect(readMessage('CONF:RES 1E3 , 0.1')).toEqual(readMessage('CONF:RES 1e3,0.1'));
  });

  it('should tell different messages apart', () => {
    expect(readMessage('MEAS:RES')).not.toEqual(readMessage('MEAS:RES?'));
    expect(readMessage('MEA:RES?')).not.toEqual(readMessage('MEAS:RES?'));
    expect(readMessage('*idn?')).toEqual({ header: '*IDN?', parameters: '' });
  });
});

describe('splitMessages', () => {
  it('should part at semicolons outside quotes', () => {
    expect(splitMessages('*CLS;FUNC "a;b" ; READ?')).toEqual(['*CLS', 'FUNC "a;b" ', ' READ?']);
    expect(splitMessages('')).toEqual([]);
    expect(splitMessages(';; ')).toEqual([]);
    expect(splitMessages('FUNC "RES;READ?')).toEqual(['FUNC "RES', 'READ?']);
  });
});

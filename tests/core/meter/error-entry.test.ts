// Entries of a SCPI error queue. Shape and range: Keysight E8402A guide p. 182, Agilent E1345A p. 67 (seen).
import { describe, expect, it } from 'vitest';
import { errorClass, parseErrorEntry } from '../../../src/core/meter/error-entry.js';

describe('parseErrorEntry', () => {
  it.each([
    // Keysight 81160A p. 504 (seen).
    ['-113,"Undefined header"', -113, 'Undefined header'],
    // Agilent E1345A p. 67 (seen); the E1412A sends a plus, p. 155 (seen).
    ['0,"No error"', 0, 'No error'],
    ['+0,"No error"', 0, 'No error'],
    ['-0,"No error"', 0, 'No error'],
    // Metrix MTX 3292 manual p. 20: no quotes (seen).
    ['0,No error', 0, 'No error'],
    // Keysight 81160A, Agilent E1412A: overflow (seen).
    ['-350,"Queue overflow"', -350, 'Queue overflow'],
    ['-350,"Too many errors"', -350, 'Too many errors'],
    [' -222 , "Data out of range;CONF:RES 1e12" ', -222, 'Data out of range;CONF:RES 1e12'],
    ['-32768,"a ""b"" c"', -32768, 'a "b" c'],
    ['32767,""', 32767, ''],
    ['0', 0, ''],
  ])('should read %s', (answer, code, text) => {
    expect(parseErrorEntry(answer)).toEqual({ code, text });
  });

  it.each([
    '',
    'No error',
    '32768,"x"',
    '-32769,"x"',
    '0.5,"x"',
    '+3.896E+02',
    '1 2,"x"',
    '--1,"x"',
  ])('should refuse %j', (answer) => {
    expect(parseErrorEntry(answer)).toBeNull();
  });

  it('should clean the text and keep it short', () => {
    expect(parseErrorEntry('-100,"\u001b[2Jx"')?.text).toBe('␛[2Jx');
    expect(parseErrorEntry(`-100,"${'x'.repeat(999)}"`)?.text).toHaveLength(255);
  });
});

// SCPI-1999 volume 2, chapter 21; the first three ranges read in the Metrix MTX 3292 manual p. 20 (seen), the
// query range from memory.
describe('errorClass', () => {
  it.each([
    [0, 'none'],
    [-100, 'command'],
    [-199, 'command'],
    [-200, 'execution'],
    [-299, 'execution'],
    [-300, 'device'],
    [-399, 'device'],
    [-400, 'query'],
    [-499, 'query'],
    [521, 'device'],
  ])('should class %s as %s', (code, name) => {
    expect(errorClass({ code, text: '' })).toBe(name);
  });
});

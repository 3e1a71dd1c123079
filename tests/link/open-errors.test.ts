import { describe, expect, it } from 'vitest';
import { serialOpenError, tcpError } from '../../src/link/open-errors.js';

const coded = (code: string, message = code): Error => Object.assign(new Error(message), { code });

describe('serialOpenError', () => {
  it.each([
    [new Error('Error: No such file or directory, cannot open /dev/ttyUSB9'), 'no such port: P'],
    [coded('ENOENT'), 'no such port: P; run `pinwalk ports`'],
    [new Error('Opening COM9: File not found'), 'no such port: P'],
    [new Error('Error Resource temporarily unavailable Cannot lock port'), 'in use by another'],
    [coded('EBUSY'), 'in use by another program'],
    [new Error('Opening COM3: Access denied'), 'in use by another program'],
    [new Error('Error: Permission denied, cannot open /dev/ttyUSB0'), 'dialout'],
    [coded('EACCES'), 'not allowed to open P'],
    [
      new Error('Error: Inappropriate ioctl for device setting custom baud rate'),
      'is not a serial port',
    ],
    [new Error('something\u001b[2J else'), 'P: something\u241b[2J else'],
    ['odd', 'P: odd'],
  ])('should say %s plainly', (error, says) => {
    expect(serialOpenError(error, 'P').reason).toContain(says);
  });
});

describe('tcpError', () => {
  it.each([
    ['ECONNREFUSED', 'nothing listens at H'],
    ['ENOTFOUND', 'no host of that name: H'],
    ['EAI_AGAIN', 'no host of that name: H'],
    ['EHOSTUNREACH', 'H cannot be reached'],
    ['ENETUNREACH', 'H cannot be reached'],
    ['ETIMEDOUT', 'H does not answer'],
    ['ECONNRESET', 'H cut the connection'],
    ['EPIPE', 'H cut the connection'],
    ['EOTHER', 'H: EOTHER'],
  ])('should say %s plainly', (code, says) => {
    expect(tcpError(coded(code), 'H').reason).toContain(says);
  });
});

describe('absence', () => {
  it('should be told from trouble', () => {
    expect(serialOpenError(coded('ENOENT'), 'P').absent).toBe(true);
    expect(serialOpenError(coded('EACCES'), 'P').absent).toBe(false);
    expect(tcpError(coded('ECONNREFUSED'), 'H').absent).toBe(true);
    expect(tcpError(coded('ECONNRESET'), 'H').absent).toBe(false);
  });
});

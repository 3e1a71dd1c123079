import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LinkNameError, parseLinkName } from '../../src/link/link-name.js';

describe('parseLinkName', () => {
  it.each([
    ['serial:/dev/ttyUSB0', { kind: 'serial', path: '/dev/ttyUSB0', settings: {} }],
    ['serial:COM3?baud=9600', { kind: 'serial', path: 'COM3', settings: { baud: 9600 } }],
    [
      'serial:/dev/serial/by-id/usb-X?baud=2400&parity=odd&data=7&stop=1.5&dtr=on&rts=off',
      {
        kind: 'serial',
        path: '/dev/serial/by-id/usb-X',
        settings: { baud: 2400, parity: 'odd', dataBits: 7, stopBits: 1.5, dtr: true, rts: false },
      },
    ],
    ['tcp://meter.local:5025', { kind: 'tcp', host: 'meter.local', port: 5025 }],
    ['tcp://192.0.2.7:1', { kind: 'tcp', host: '192.0.2.7', port: 1 }],
    ['tcp://[2001:db8::7]:65535', { kind: 'tcp', host: '2001:db8::7', port: 65535 }],
    ['virtual:demo', { kind: 'virtual', name: 'demo' }],
    ['log:a b/readings:1.jsonl', { kind: 'log', file: 'a b/readings:1.jsonl' }],
    ['stdin:', { kind: 'stdin' }],
  ])('should read %s', (text, name) => {
    expect(parseLinkName(text)).toEqual(name);
  });

  it.each([
    ['', 'write one of serial:'],
    ['/dev/ttyUSB0', 'write one of serial:'],
    ['usb:/dev/ttyUSB0', 'unknown kind of link'],
    ['serial:', 'the port is missing'],
    ['serial:?baud=9600', 'the port is missing'],
    ['serial:/dev/ttyUSB0?', 'unknown setting ""'],
    [
      'serial:/dev/ttyUSB0?speed=9600',
      'unknown setting "speed"; known are baud, parity, data, stop, dtr, rts',
    ],
    ['serial:/dev/ttyUSB0?toString=1', 'unknown setting "toString"'],
    ['serial:/dev/ttyUSB0?baud=9600&baud=1200', 'baud is given twice'],
    ['serial:/dev/ttyUSB0?baud=0', 'baud must be a whole number'],
    ['serial:/dev/ttyUSB0?baud=9600.5', 'baud must be a whole number'],
    ['serial:/dev/ttyUSB0?parity=E', 'parity must be none, even, odd, mark or space'],
    ['serial:/dev/ttyUSB0?data=9', 'data must be 5, 6, 7 or 8'],
    ['serial:/dev/ttyUSB0?stop=3', 'stop must be 1, 1.5 or 2'],
    ['serial:/dev/ttyUSB0?dtr=maybe', 'dtr must be on or off'],
    ['tcp:host:5025', 'write tcp://host:port'],
    ['tcp://host', 'write tcp://host:port'],
    ['tcp://host:0', 'the TCP port must be 1 to 65535'],
    ['tcp://host:65536', 'the TCP port must be 1 to 65535'],
    ['tcp://user@host:1/x', 'write tcp://host:port'],
    ['virtual:', 'the name is missing'],
    ['log:', 'the file is missing'],
    ['stdin:x', 'nothing may follow'],
    ['log:a\nb', 'control characters'],
  ])('should refuse %j in one line', (text, says) => {
    expect(() => parseLinkName(text)).toThrow(LinkNameError);
    expect(() => parseLinkName(text)).toThrow(says);
  });

  it('should refuse anything else in one line without control characters', () => {
    const start = fc.constantFrom(
      '',
      'serial:',
      'serial:x?',
      'tcp://',
      'virtual:',
      'log:',
      'stdin:',
    );
    fc.assert(
      fc.property(start, fc.string({ unit: 'binary', maxLength: 60 }), (scheme, rest) => {
        try {
          parseLinkName(scheme + rest);
        } catch (error) {
          expect(error).toBeInstanceOf(LinkNameError);
          expect((error as Error).message).not.toMatch(/\p{Cc}/u);
        }
      }),
      { seed: 7 },
    );
  });
});

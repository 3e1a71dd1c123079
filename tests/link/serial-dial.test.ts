// Opening a serial port, on serialport's own mock and on a port whose control lines fail.
import { SerialPortMock } from 'serialport';
import { beforeEach, describe, expect, it } from 'vitest';
import type { ConnectionEvents } from '../../src/link/connection.js';
import {
  dialSerial,
  type MakePort,
  type PortLike,
  type PortOptions,
  type SerialWire,
  serialTitle,
  wireOf,
} from '../../src/link/serial-dial.js';
import { until } from './record-link.js';

const path = '/dev/mock';
const finder = { whereNow: async () => path, opened: () => undefined };
const wire: SerialWire = { baud: 2400, dataBits: 7, parity: 'even', stopBits: 1 };

const record = () => {
  const told: string[] = [];
  let text = '';
  const events: ConnectionEvents = {
    opened: () => told.push('opened'),
    bytes: (chunk) => {
      text += Buffer.from(chunk).toString('latin1');
    },
    gone: ({ reason }) => told.push(`gone: ${reason}`),
  };
  return { told, events, text: () => text };
};

describe('dialSerial on a mock port', () => {
  const ports: SerialPortMock[] = [];
  const make: MakePort = (options) => {
    const port = new SerialPortMock(options);
    ports.push(port);
    return port;
  };

  beforeEach(() => {
    SerialPortMock.binding.reset();
    SerialPortMock.binding.createPort(path, { echo: false, record: true });
    ports.length = 0;
  });

  it('should open with the wire of the driver and pass bytes both ways', async () => {
    const { told, events, text } = record();
    const connection = dialSerial(wire, finder, path, make)(events);
    await until('opened', () => told.length > 0);
    const binding = ports[0]?.port;
    expect(binding?.openOptions).toMatchObject({
      path,
      baudRate: 2400,
      dataBits: 7,
      parity: 'even',
    });

    connection.send(Buffer.from('D'));
    await until('the write', () => binding?.recording.toString() === 'D');
    binding?.emitData(Buffer.from([0xb5, 0x0d]));
    await until('the bytes', () => text() === '\u00b5\r');
    await connection.close();

    expect(told).toEqual(['opened']);
    expect(ports[0]?.isOpen).toBe(false);
  });

  it('should make a fresh port at every opening', async () => {
    for (let i = 0; i < 2; i += 1) {
      const { told, events } = record();
      const connection = dialSerial(wire, finder, path, make)(events);
      await until('opened', () => told.length > 0);
      await connection.close();
    }
    expect(ports).toHaveLength(2);
    expect(ports[0]).not.toBe(ports[1]);
  });

  it('should let go of a port that opens after the link was closed', async () => {
    const { told, events } = record();
    await dialSerial(wire, finder, path, make)(events).close();
    expect(told).toEqual([]);
    expect(ports.some(({ isOpen }) => isOpen)).toBe(false);
  });

  it('should say that the port is not there', async () => {
    SerialPortMock.binding.reset();
    const { told, events } = record();
    dialSerial(wire, finder, path, make)(events);
    await until('gone', () => told.length > 0);
    expect(told[0]).toMatch(/^gone: .*\/dev\/mock/u);
    expect(told).toHaveLength(1);
  });
});

describe('dialSerial with a port that answers back', () => {
  const scene = (changes: Partial<PortLike> = {}) => {
    const calls: string[] = [];
    let error: (failure: Error) => void = () => undefined;
    let options: PortOptions | undefined;
    const port: PortLike = {
      isOpen: true,
      open: (done) => done(null),
      close: (done) => {
        calls.push('close');
        done(null);
      },
      flush: (done) => done(null),
      get: (done) => done(null),
      set: (lines, done) => {
        calls.push(`set ${JSON.stringify(lines)}`);
        done(new Error('Inappropriate ioctl for device, cannot set'));
      },
      write: () => calls.push('write'),
      on: (event: string, hear: (...all: never[]) => void) => {
        if (event === 'error') error = hear as typeof error;
      },
      ...changes,
    };
    const make: MakePort = (given) => {
      options = given;
      return port;
    };
    const fail = (message: string): void => error(new Error(message));
    return { calls, make, fail, options: () => options };
  };

  it('should go on when the control lines cannot be set', async () => {
    const { calls, make } = scene();
    const { told, events } = record();
    dialSerial({ ...wire, dtr: true, rts: false }, finder, path, make)(events);
    await until('opened', () => told.length > 0);
    expect(told).toEqual(['opened']);
    expect(calls).toEqual(['set {"dtr":true,"rts":false}']);
  });

  it('should leave control lines alone that nobody mentions', async () => {
    const { calls, make } = scene();
    const { told, events } = record();
    dialSerial(wire, finder, path, make)(events);
    await until('opened', () => told.length > 0);
    expect(calls).toEqual([]);
  });

  it('should never write to a port that is not open', async () => {
    const { calls, make } = scene({ isOpen: false });
    const { told, events } = record();
    const connection = dialSerial(wire, finder, path, make)(events);
    connection.send(Buffer.from('too early'));
    await until('opened', () => told.length > 0);
    connection.send(Buffer.from('closed meanwhile'));
    expect(calls).toEqual([]);
  });

  it('should end and let go at an error of an open port', async () => {
    const { calls, make, fail } = scene();
    const { told, events } = record();
    const connection = dialSerial(wire, finder, path, make)(events);
    await until('opened', () => told.length > 0);
    fail('Input/output error');
    connection.send(Buffer.from('too late'));
    expect(told).toEqual(['opened', 'gone: /dev/mock: Input/output error']);
    expect(calls).toEqual(['close']);
  });
});

describe('wire settings', () => {
  it('should let the link name override the driver', () => {
    const set = wireOf(wire, { baud: 9600, dtr: false });
    expect(set).toEqual({ ...wire, baud: 9600, dtr: false });
    expect(serialTitle({ kind: 'serial', path, settings: {} }, set)).toBe('/dev/mock, 9600 7E1');
  });
});

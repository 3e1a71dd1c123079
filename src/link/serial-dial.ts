// Dials a serial port: a fresh port object at every opening. Never writes to a closed port, because serialport
// keeps such bytes and sends them at the next opening. Control lines that the device lacks are no error.
import type { Driver } from '../core/meter/driver-format.js';
import type { Connection, ConnectionEvents, Dial, Gone } from './connection.js';
import { type AskedPort, type HangUpWatch, watchHangUp } from './hang-up-watch.js';
import type { SerialName, SerialSettings } from './link-name.js';
import { serialOpenError } from './open-errors.js';
import type { SerialFinder } from './serial-finder.js';

export type SerialWire = Driver['wire']['serial'];

/** The part of serialport's port that is used here. */
export interface PortLike extends AskedPort {
  open(done: (error: Error | null) => void): void;
  close(done: (error: Error | null) => void): void;
  flush(done: (error: Error | null) => void): void;
  set(lines: { dtr: boolean; rts: boolean }, done: (error: Error | null) => void): void;
  write(bytes: Uint8Array): unknown;
  on(event: 'data', hear: (chunk: Buffer) => void): unknown;
  on(event: 'error' | 'close', hear: (error?: Error | null) => void): unknown;
}

export interface PortOptions {
  readonly path: string;
  readonly baudRate: number;
  readonly dataBits: 5 | 6 | 7 | 8;
  readonly parity: SerialWire['parity'];
  readonly stopBits: 1 | 1.5 | 2;
  readonly autoOpen: false;
}

export type MakePort = (options: PortOptions) => PortLike | Promise<PortLike>;

/** Loaded where a port is opened: most walks that begin need it not at once, and some not at all. */
const realPort: MakePort = async (options) => {
  const { SerialPort } = await import('serialport');
  return new SerialPort(options);
};

/** The driver's settings, with what the link name says in their place. */
export const wireOf = (driver: SerialWire, asked: SerialSettings): SerialWire => ({
  ...driver,
  ...asked,
});

/** As technicians write it: `/dev/ttyUSB0, 9600 8N1`. */
export const serialTitle = ({ path }: SerialName, wire: SerialWire): string =>
  `${path}, ${wire.baud} ${wire.dataBits}${wire.parity.charAt(0).toUpperCase()}${wire.stopBits}`;

export const dialSerial =
  (wire: SerialWire, finder: SerialFinder, asked: string, makePort: MakePort = realPort): Dial =>
  (events) => {
    const connection = new SerialConnection(wire, events, makePort);
    connection.start(finder, asked);
    return connection;
  };

class SerialConnection implements Connection {
  #port: PortLike | undefined;
  #watch: HangUpWatch | undefined;
  #opening: Promise<void> = Promise.resolve();
  #over = false;

  constructor(
    private readonly wire: SerialWire,
    private readonly events: ConnectionEvents,
    private readonly makePort: MakePort,
  ) {}

  start(finder: SerialFinder, asked: string): void {
    this.#opening = this.#open(finder).catch((error: unknown) =>
      this.#end(serialOpenError(error, asked)),
    );
  }

  async #open(finder: SerialFinder): Promise<void> {
    const path = await finder.whereNow();
    if (this.#over) return;
    const { baud, dataBits, parity, stopBits } = this.wire;
    const port = await this.makePort({
      path,
      baudRate: baud,
      dataBits,
      parity,
      stopBits,
      autoOpen: false,
    });
    if (this.#over) return;
    port.on('error', (error) => this.#end(serialOpenError(error ?? 'failed', path)));
    const wentAway = (): void =>
      this.#end({ reason: `${path} went away: unplugged or switched off`, absent: false });
    port.on('close', wentAway);
    await new Promise<void>((resolve, reject) => {
      port.open((error) => (error ? reject(error) : resolve()));
    });
    this.#port = port;
    if (this.#over) return;
    this.#setLines(port);
    finder.opened(path);
    this.events.opened();
    const watch = watchHangUp(port, wentAway);
    this.#watch = watch;
    port.on('data', (chunk) => {
      watch.heard();
      if (!this.#over) this.events.bytes(chunk);
    });
  }

  #setLines(port: PortLike): void {
    const { dtr, rts } = this.wire;
    if (dtr === undefined && rts === undefined) return;
    port.set({ dtr: dtr ?? true, rts: rts ?? true }, () => undefined);
  }

  #end(why: Gone): void {
    if (this.#over) return;
    this.#over = true;
    void this.#shut();
    this.events.gone(why);
  }

  /** Flushed first: closing would otherwise wait for bytes that a stuck device never takes. */
  #shut(): Promise<void> {
    this.#watch?.stop();
    const port = this.#port;
    return new Promise((resolve) => {
      if (!port?.isOpen) resolve();
      else port.flush(() => port.close(() => resolve()));
    });
  }

  send(bytes: Uint8Array): void {
    if (!this.#over && this.#port?.isOpen) this.#port.write(bytes);
  }

  async close(): Promise<void> {
    this.#over = true;
    await this.#opening;
    await this.#shut();
  }
}

// The virtual bench over TCP, as a raw socket instrument. One program at a time: a second one is turned away.
// Listens on this machine only unless told otherwise.
import { once } from 'node:events';
import { type AddressInfo, createServer, type Server, type Socket } from 'node:net';
import type { Numbered } from '../core/events.js';
import type { Clock } from '../session/ports.js';
import { createServedMeter, type ServedMeter } from './served-meter.js';
import type { VirtualMeterSetup } from './virtual-meter.js';

export interface BenchServerOptions {
  readonly setup: VirtualMeterSetup;
  readonly clock: Clock;
  /** 0 takes any free port. */
  readonly port: number;
  readonly host?: string;
  /** Each connection begins a new walk, or goes on with the one before. */
  readonly walks: 'fresh' | 'continued';
}

export interface BenchServer {
  readonly port: number;
  /** Cuts the connection and refuses new ones for so long, as a pulled lead does. */
  drop(forS: number): void;
  /** Lets the technician hear what the walk says. */
  hear(event: Numbered): void;
  close(): Promise<void>;
}

const retryS = 1;

/** @throws Error when the port cannot be had; the message is the system's. */
export const startBenchServer = async (options: BenchServerOptions): Promise<BenchServer> => {
  const { setup, clock, host = '127.0.0.1', walks } = options;
  let socket: Socket | null = null;
  let server: Server | null = null;
  let cancelReturn = (): void => undefined;

  const makeMeter = (): ServedMeter =>
    createServedMeter(setup, clock, { send: (bytes) => socket?.write(bytes), drop });
  let meter = makeMeter();

  const take = (caller: Socket): void => {
    if (socket !== null) {
      caller.destroy();
      return;
    }
    socket = caller;
    if (walks === 'fresh') meter = makeMeter();
    caller.setNoDelay(true);
    caller.on('data', (bytes) => meter.receive(bytes));
    // The end of a connection says all there is to say.
    caller.on('error', () => undefined);
    caller.on('close', () => {
      if (socket !== caller) return;
      socket = null;
      meter.detach();
    });
    meter.attach();
  };

  const listen = async (port: number): Promise<Server> => {
    const listening = createServer(take).listen(port, host);
    await once(listening, 'listening');
    return listening;
  };

  server = await listen(options.port);
  const { port } = server.address() as AddressInfo;

  function drop(forS: number): void {
    socket?.destroy();
    server?.close();
    server = null;
    cancelReturn();
    cancelReturn = clock.after(forS, () => {
      listen(port).then(
        (listening) => {
          server = listening;
        },
        // Somebody else has the port: try again later.
        () => drop(retryS),
      );
    });
  }

  return {
    port,
    drop,
    hear: (event) => meter.hear(event),
    close: async () => {
      cancelReturn();
      socket?.destroy();
      if (server === null) return;
      const closed = once(server, 'close');
      server.close();
      await closed;
    },
  };
};

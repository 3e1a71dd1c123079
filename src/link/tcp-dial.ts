// Dials a raw socket instrument or a serial-to-network box. Refuses to wait for ever: connecting has a
// time-out, and a peer that is asked but gives no sign of life is given up so that it can be dialled again.
import { connect, type Socket } from 'node:net';
import type { Dial } from './connection.js';
import { tcpError } from './open-errors.js';

const connectWithinMs = 3000;
const keepAliveAfterMs = 5000;
/** Keep-alive does not run while sent data waits for its receipt, so a dead peer is noticed here. */
const deadAfterMs = 15_000;

export interface TcpTarget {
  readonly host: string;
  readonly port: number;
}

export const tcpAddress = ({ host, port }: TcpTarget): string =>
  `${host.includes(':') ? `[${host}]` : host}:${port}`;

export const dialTcp =
  (target: TcpTarget): Dial =>
  (events) => {
    const at = tcpAddress(target);
    let over = false;
    let deadTimer: NodeJS.Timeout | undefined;

    const socket: Socket = connect({ ...target, noDelay: true });
    const finish = (reason: string): void => {
      clearTimeout(connectTimer);
      clearTimeout(deadTimer);
      socket.destroy();
      if (over) return;
      over = true;
      events.gone(reason);
    };
    const connectTimer = setTimeout(
      () => finish(tcpError(new Error('ETIMEDOUT'), at)),
      connectWithinMs,
    );

    socket.on('connect', () => {
      clearTimeout(connectTimer);
      socket.setKeepAlive(true, keepAliveAfterMs);
      if (!over) events.opened();
    });
    socket.on('data', (chunk: Buffer) => {
      clearTimeout(deadTimer);
      deadTimer = undefined;
      if (!over) events.bytes(chunk);
    });
    socket.on('error', (error) => finish(tcpError(error, at)));
    socket.on('end', () => finish(`${at} closed the connection`));
    socket.on('close', () => finish(`${at} closed the connection`));

    return {
      send: (bytes) => {
        if (over || socket.connecting || !socket.writable) return;
        socket.write(bytes);
        deadTimer ??= setTimeout(
          () => finish(`${at} gave no sign of life for ${deadAfterMs / 1000} s`),
          deadAfterMs,
        );
      },
      close: async () => {
        over = true;
        if (socket.destroyed) {
          finish('');
          return;
        }
        const closed = new Promise<void>((resolve) => socket.once('close', () => resolve()));
        finish('');
        await closed;
      },
    };
  };

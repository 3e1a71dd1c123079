// Dials a raw socket instrument or a serial-to-network box. Refuses to wait for ever: connecting has a
// time-out, and a peer that is asked but gives no sign of life is given up so that it can be dialled again.
import { connect, type Socket } from 'node:net';
import type { Dial, Gone } from './connection.js';
import { tcpError } from './open-errors.js';

export interface TcpPatience {
  readonly connectWithinS: number;
  readonly keepAliveAfterS: number;
  /** Keep-alive does not run while sent data waits for its receipt, so a dead peer is noticed by this. */
  readonly deadAfterS: number;
}

const usualPatience: TcpPatience = { connectWithinS: 3, keepAliveAfterS: 5, deadAfterS: 15 };

export interface TcpTarget {
  readonly host: string;
  readonly port: number;
}

export const tcpAddress = ({ host, port }: TcpTarget): string =>
  `${host.includes(':') ? `[${host}]` : host}:${port}`;

export const dialTcp =
  (target: TcpTarget, patience: TcpPatience = usualPatience): Dial =>
  (events) => {
    const at = tcpAddress(target);
    const hungUp: Gone = { reason: `${at} closed the connection`, absent: false };
    const { connectWithinS, keepAliveAfterS, deadAfterS } = patience;
    let over = false;
    let deadTimer: NodeJS.Timeout | undefined;

    const socket: Socket = connect({ ...target, noDelay: true });
    const finish = (why: Gone): void => {
      clearTimeout(connectTimer);
      clearTimeout(deadTimer);
      socket.destroy();
      if (over) return;
      over = true;
      events.gone(why);
    };
    const connectTimer = setTimeout(
      () => finish(tcpError(new Error('ETIMEDOUT'), at)),
      connectWithinS * 1000,
    );

    socket.on('connect', () => {
      clearTimeout(connectTimer);
      socket.setKeepAlive(true, keepAliveAfterS * 1000);
      if (!over) events.opened();
    });
    socket.on('data', (chunk: Buffer) => {
      clearTimeout(deadTimer);
      deadTimer = undefined;
      if (!over) events.bytes(chunk);
    });
    socket.on('error', (error) => finish(tcpError(error, at)));
    socket.on('end', () => finish(hungUp));
    socket.on('close', () => finish(hungUp));

    return {
      send: (bytes) => {
        if (over || socket.connecting || !socket.writable) return;
        socket.write(bytes);
        deadTimer ??= setTimeout(
          () => finish({ reason: `${at} gave no sign of life for ${deadAfterS} s`, absent: false }),
          deadAfterS * 1000,
        );
      },
      close: async () => {
        over = true;
        if (socket.destroyed) {
          finish(hungUp);
          return;
        }
        const closed = new Promise<void>((resolve) => socket.once('close', () => resolve()));
        finish(hungUp);
        await closed;
      },
    };
  };

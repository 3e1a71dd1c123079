// One connection to an unknown meter, for a few questions. Collects bytes; makes no sense of them.
import type { Clock } from '../session/ports.js';
import type { Dial } from './connection.js';

export interface Probe {
  /** Waits, and gives what came. With `more`, waits that much longer whenever something came. */
  listen(seconds: number, more?: number): Promise<Uint8Array>;
  /** Forgets what came before, sends, and gives what comes back until `seconds` have passed. */
  ask(bytes: Uint8Array, seconds: number): Promise<Uint8Array>;
  send(bytes: Uint8Array): void;
  /** Every chunk from now on goes here, until the returned function is called. */
  follow(hear: (chunk: Uint8Array) => void): () => void;
  close(): Promise<void>;
}

/** @throws Error with the reason in words when the connection cannot be opened. */
export const openProbe = (dial: Dial, clock: Clock): Promise<Probe> =>
  new Promise((resolve, reject) => {
    let heard: Uint8Array[] = [];
    let follower: ((chunk: Uint8Array) => void) | undefined;
    let gone = false;

    const wait = (seconds: number): Promise<void> =>
      new Promise((done) => {
        if (gone) done();
        else clock.after(seconds, done);
      });
    const take = (): Uint8Array => {
      const bytes = Buffer.concat(heard);
      heard = [];
      return bytes;
    };

    const connection = dial({
      opened: () => resolve(probe),
      bytes: (chunk) => {
        heard.push(chunk);
        follower?.(chunk);
      },
      gone: ({ reason }) => {
        gone = true;
        reject(new Error(reason));
      },
    });

    const probe: Probe = {
      listen: async (seconds, more = 0) => {
        await wait(seconds);
        if (heard.length > 0 && more > 0) await wait(more);
        return take();
      },
      ask: async (bytes, seconds) => {
        take();
        connection.send(bytes);
        await wait(seconds);
        return take();
      },
      send: (bytes) => connection.send(bytes),
      follow: (hear) => {
        follower = hear;
        return () => {
          follower = undefined;
        };
      },
      close: () => connection.close(),
    };
  });

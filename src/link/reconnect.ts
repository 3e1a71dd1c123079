// Makes a link of a way to dial: dials again after a loss, with growing pauses, until closed. Refuses to mix
// connections: each gets a fresh line cutter, and what an old one still says is ignored.
import { bytesOf } from '../core/meter/wire-text.js';
import type { Clock, Link, LinkListener } from '../session/ports.js';
import type { Connection, Dial, Gone } from './connection.js';
import { createLineCutter, type LinkDriver } from './line-cutter.js';

/** `once`: give up when the very first opening fails. `forever`: the device may come later. */
export type Patience = 'once' | 'forever';

export interface ReconnectOptions {
  readonly title: string;
  readonly dial: Dial;
  readonly driver: LinkDriver;
  readonly clock: Clock;
  readonly patience: Patience;
}

const firstPauseS = 0.25;
const longestPauseS = 2;
/** A connection that ends sooner, without a byte, was no success: the pauses go on growing. */
const provenAfterS = 2;

export const createReconnectingLink = (options: ReconnectOptions): Link => {
  const { title, dial, driver, clock } = options;
  let listener: LinkListener | undefined;
  let current: { readonly connection: Connection; readonly asked: () => void } | undefined;
  let cancelPause = (): void => undefined;
  let closed = false;
  let everUp = false;
  let pauseS = firstPauseS;
  let lastReason = '';

  const tryAgain = (): void => {
    cancelPause = clock.after(pauseS, attempt);
    pauseS = Math.min(2 * pauseS, longestPauseS);
  };

  /** A loss is told once, and again only where something new stands in the way of coming back. */
  const fail = (hears: LinkListener, { reason, absent }: Gone): void => {
    if (!everUp && options.patience === 'once') {
      closed = true;
      hears.failed(clock.now(), reason);
      return;
    }
    const news = lastReason === '' || (!absent && reason !== lastReason);
    if (news) {
      lastReason = reason;
      hears.lost(clock.now(), reason);
    }
    if (!closed) tryAgain();
  };

  const attempt = (): void => {
    const hears = listener;
    if (hears === undefined || closed) return;
    const cutter = createLineCutter(driver);
    let upSince: number | undefined;
    let over = false;
    const connection = dial({
      opened: () => {
        if (over || closed) return;
        upSince = clock.now();
        const again = everUp;
        everUp = true;
        lastReason = '';
        hears.opened(upSince, again);
      },
      bytes: (chunk) => {
        if (over || closed) return;
        const t = clock.now();
        pauseS = firstPauseS;
        for (const [nth, frame] of cutter.push(chunk).entries()) hears.frame(t, frame, nth > 0);
      },
      gone: (why) => {
        if (over || closed) return;
        over = true;
        current = undefined;
        if (upSince !== undefined && clock.now() - upSince >= provenAfterS) pauseS = firstPauseS;
        fail(hears, why);
      },
    });
    current = { connection, asked: cutter.asked };
  };

  return {
    title,
    open: (hears) => {
      if (listener !== undefined) throw new Error(`link ${title} was opened twice`);
      listener = hears;
      attempt();
    },
    send: (text) => {
      if (current === undefined || text === '') return;
      current.asked();
      current.connection.send(bytesOf(text, driver.wire.encoding));
    },
    close: async () => {
      closed = true;
      cancelPause();
      await current?.connection.close();
      current = undefined;
    },
  };
};

// A clock that stands still until it is moved by hand.
import type { Clock } from '../../src/session/ports.js';

export interface HandClock extends Clock {
  /** Moves on, calling back what falls due on the way, in order. */
  advance(seconds: number): void;
  /** When the next call is due; undefined where nothing waits. */
  next(): number | undefined;
}

export const handClock = (): HandClock => {
  let now = 0;
  let waiting: { t: number; call: () => void }[] = [];
  const earliest = () =>
    waiting.reduce<(typeof waiting)[number] | undefined>(
      (first, entry) => (first === undefined || entry.t < first.t ? entry : first),
      undefined,
    );
  return {
    now: () => now,
    after: (seconds, call) => {
      const entry = { t: now + seconds, call };
      waiting.push(entry);
      return () => {
        waiting = waiting.filter((other) => other !== entry);
      };
    },
    advance: (seconds) => {
      const until = now + seconds;
      for (let due = earliest(); due !== undefined && due.t <= until + 1e-9; due = earliest()) {
        const happening = due;
        waiting = waiting.filter((other) => other !== happening);
        now = Math.max(now, happening.t);
        happening.call();
      }
      now = until;
    },
    next: () => earliest()?.t,
  };
};

// A clock that stands still until it is told to run: a whole walk passes in a moment.
import type { Clock } from '../../../src/session/ports.js';

export interface SteppedClock extends Clock {
  /** Calls everything due up to `untilT`, in order of time, and stops there. Returns early when `done`. */
  run(untilT: number, done?: () => boolean): void;
  /** Time passes and nothing is called, as while the process is stopped. */
  sleep(seconds: number): void;
}

export const createSteppedClock = (startT = 0): SteppedClock => {
  let now = startT;
  let next = 0;
  const waiting = new Map<number, { readonly atT: number; readonly call: () => void }>();

  const earliest = ():
    | [number, { readonly atT: number; readonly call: () => void }]
    | undefined => {
    let found: [number, { readonly atT: number; readonly call: () => void }] | undefined;
    for (const entry of waiting)
      if (found === undefined || entry[1].atT < found[1].atT) found = entry;
    return found;
  };

  return {
    now: () => now,
    after: (seconds, call) => {
      const id = next;
      next += 1;
      waiting.set(id, { atT: now + Math.max(0, seconds), call });
      return () => waiting.delete(id);
    },
    sleep: (seconds) => {
      now += seconds;
    },
    run: (untilT, done = () => false) => {
      for (let due = earliest(); due !== undefined && due[1].atT <= untilT; due = earliest()) {
        waiting.delete(due[0]);
        now = Math.max(now, due[1].atT);
        due[1].call();
        if (done()) return;
      }
      now = Math.max(now, untilT);
    },
  };
};

// A clock for tests that never waits: as soon as nothing else is to do, the next call falls due.
import type { Clock } from '../../src/session/ports.js';
import { handClock } from './hand-clock.js';

export const eagerClock = (): Clock => {
  const clock = handClock();
  let turning = false;
  const turn = (): void => {
    const next = clock.next();
    turning = next !== undefined;
    if (next === undefined) return;
    clock.advance(next - clock.now());
    setImmediate(turn);
  };
  return {
    now: clock.now,
    after: (seconds, call) => {
      const cancel = clock.after(seconds, call);
      if (!turning) setImmediate(turn);
      turning = true;
      return cancel;
    },
  };
};

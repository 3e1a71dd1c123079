// One sound at a time. The newest moment wins: it cuts what sounds, unless that is of a higher level; then it
// waits for its end. Of those that wait only the newest of the highest level is kept.
import type { Moment } from '../core/cues/moment.js';

export interface Turns {
  take(moment: Moment): void;
  /** Settles when nothing sounds or waits. */
  quiet(): Promise<void>;
  /** Cuts what sounds, forgets what waits and takes no more. */
  stop(): void;
}

/** @param sound sounds one moment; settles when it is over, soon after its signal. */
export const createTurns = (
  sound: (moment: Moment, signal: AbortSignal) => Promise<void>,
): Turns => {
  let current: { moment: Moment; cut: AbortController; over: Promise<void> } | null = null;
  let next: Moment | null = null;
  let stopped = false;

  const go = (): void => {
    if (current !== null || next === null || stopped) return;
    const moment = next;
    next = null;
    const cut = new AbortController();
    const over = sound(moment, cut.signal).finally(() => {
      current = null;
      go();
    });
    current = { moment, cut, over };
  };

  return {
    take: (moment) => {
      const cuts = current !== null && moment.level >= current.moment.level;
      if (cuts) current?.cut.abort();
      if (next === null || cuts || moment.level >= next.level) next = moment;
      go();
    },
    quiet: async () => {
      while (current !== null) await current.over;
    },
    stop: () => {
      stopped = true;
      current?.cut.abort();
    },
  };
};

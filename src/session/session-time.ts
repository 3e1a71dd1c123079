// Which second of a session a moment of wall time is: on resuming, `t` goes on from the last event plus the wall
// time that passed.
import type { WalkEvent } from '../core/events.js';

/** @param events all of the session so far, the header first. */
export const sessionTimeAt = (events: readonly WalkEvent[], wallMs: number): number => {
  const lastT = events.at(-1)?.t ?? 0;
  const stamped = events.findLast(
    (event) => event.type === 'session-opened' || event.type === 'session-resumed',
  );
  if (stamped === undefined || !('wallTime' in stamped) || stamped.wallTime === null) return lastT;
  const passedS = (wallMs - Date.parse(stamped.wallTime)) / 1000;
  return Number.isFinite(passedS) ? Math.max(lastT, stamped.t + passedS) : lastT;
};

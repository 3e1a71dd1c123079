// Reads a session once from its first event to its last and keeps what going anywhere in it needs. Memory grows
// with the stretches and the waymarks, not with the readings.
import type { EventOf, Numbered } from '../events.js';
import { foldStored, openStored } from '../walk/fold-stored.js';
import type { WalkState } from '../walk/state.js';
import { type Checkpoint, type Recording, stretchEvents } from './recording.js';
import { createWaymarkList } from './waymark.js';

export interface SessionIndex {
  /** The next event; true when a stretch begins with it. */
  take(event: Numbered): boolean;
  /** The recording, whose events are fetched by `stretch`. */
  done(stretch: Recording['stretch']): Recording;
}

export const indexSession = (opened: EventOf<'session-opened'>): SessionIndex => {
  const checkpoints: Checkpoint[] = [];
  const list = createWaymarkList();
  const reached = new Map<string, number>();
  let state: WalkState = openStored(opened);
  let t = opened.t;
  let count = 0;
  return {
    take(event) {
      const begins = count % stretchEvents === 0;
      if (begins) checkpoints.push({ state, t });
      state = foldStored(state, event);
      if (event.t > t) t = event.t;
      if (event.type !== 'reading-taken') {
        list.take(event, count, t);
        if (event.type === 'pin-reached' && !reached.has(event.pin)) reached.set(event.pin, count);
      }
      count += 1;
      return begins;
    },
    done: (stretch) => ({
      opened,
      count,
      startT: opened.t,
      endT: t,
      endState: state,
      checkpoints,
      waymarks: list.waymarks,
      reached,
      stretch,
    }),
  };
};

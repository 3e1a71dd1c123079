// Folds what a file holds. Each event there is sound by itself and on the chain, but a file that was made by hand may
// tell what cannot have happened; that is refused at the event, and is no failure of this program.
import type { EventOf, Numbered, WalkEvent } from '../events.js';
import { quoted } from '../problems.js';
import { evolve } from './evolve.js';
import { openWalk } from './open-walk.js';
import type { WalkState } from './state.js';

export class UnsoundEventError extends Error {
  override readonly name = 'UnsoundEventError';
  constructor(event: WalkEvent & Partial<Numbered>, cause: unknown) {
    const why = cause instanceof Error ? cause.message : String(cause);
    const place = event.seq === undefined ? '' : ` with "seq" ${event.seq}`;
    super(
      `the event${place}, ${event.type}, does not fit the session it stands in (${quoted(why)}); use a copy from before the file was changed`,
      { cause },
    );
  }
}

/** @throws UnsoundEventError */
export const foldStored = (state: WalkState, event: Numbered | WalkEvent): WalkState => {
  try {
    return evolve(state, event);
  } catch (cause) {
    throw new UnsoundEventError(event, cause);
  }
};

/** @throws UnsoundEventError for a header that names what its profile does not have. */
export const openStored = (opened: EventOf<'session-opened'>): WalkState => {
  try {
    return openWalk(opened);
  } catch (cause) {
    throw new UnsoundEventError(opened, cause);
  }
};

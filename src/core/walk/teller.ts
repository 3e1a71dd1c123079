// Collects the events of one decision, folding each into the state before the next is decided.
import type { WalkEvent } from '../events.js';
import { evolve } from './evolve.js';
import type { WalkState } from './state.js';

export interface Teller {
  /** The state with everything told so far. */
  readonly state: WalkState;
  readonly events: readonly WalkEvent[];
  tell(event: WalkEvent): void;
}

export const createTeller = (initial: WalkState, ...events: WalkEvent[]): Teller => {
  let state = initial;
  return {
    get state() {
      return state;
    },
    events,
    tell(event) {
      state = evolve(state, event);
      events.push(event);
    },
  };
};

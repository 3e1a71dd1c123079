// Folds what is suspected, and the probing of places that this asks for beside the walk.
import type { SuspectEvent } from '../event-families.js';
import { observe } from '../suspects/observe.js';
import { disown } from './contact.js';
import type { WalkState } from './state.js';
import { elsewhere } from './ways.js';

export const takeSuspects = (state: WalkState, event: SuspectEvent): WalkState => {
  switch (event.type) {
    case 'suspects-ranked':
      return {
        ...state,
        ranked: event,
        accused: event.quiet === true ? state.accused : (event.suspects[0] ?? null),
      };
    case 'probe-begun':
      return {
        ...state,
        probing: event,
        question: null,
        hushed: false,
        contact: disown(state.contact),
        reachedT: event.t,
      };
    case 'place-judged':
      return { ...state, evidence: observe(state.evidence, event, state.probing) };
    case 'probe-ended':
      return {
        ...state,
        probing: null,
        question: null,
        hushed: false,
        latest: null,
        alignment: elsewhere(state.alignment),
        contact: disown(state.contact),
        reachedT: event.t,
      };
  }
};

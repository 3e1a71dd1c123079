// Folds what is done with the leads before the walk begins.
import type { ReadyEvent } from '../event-families.js';
import { afterBlindness, restOn } from './contact.js';
import { askedReady, refusedNow } from './ready-step.js';
import type { WalkState } from './state.js';

export const takeReady = (state: WalkState, event: ReadyEvent): WalkState => {
  switch (event.type) {
    case 'ready-asked':
      return {
        ...state,
        ready: askedReady(event.step),
        readyNext: state.readyNext.filter((step) => step !== event.step),
      };
    case 'lead-zeroed': {
      const { ohms, standardUncertainty, degreesOfFreedom, readings } = event;
      return {
        ...state,
        ready: null,
        leads: { ohms, standardUncertainty, degreesOfFreedom, readings },
        contact: restOn(state.contact, null, 0),
      };
    }
    case 'lead-zero-refused':
      return { ...state, ready: refusedNow(state.ready) };
    case 'reference-checked':
      return event.outcome.ok
        ? { ...state, ready: null, contact: restOn(state.contact, null, event.value) }
        : { ...state, ready: refusedNow(state.ready) };
    case 'ready-left':
      return { ...state, ready: null, contact: afterBlindness(state.contact) };
  }
};

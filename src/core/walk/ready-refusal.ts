// Why a step with the leads cannot be asked for now.
import type { ReadyStep } from '../inputs.js';
import { siUnit } from '../reading.js';
import type { WalkState } from './state.js';

/** In words, or null when it can. */
export const readyRefusal = (state: WalkState, step: ReadyStep): string | null => {
  if (state.stage !== 'ground-check' && state.ready === null) {
    return 'that is done before the walk begins';
  }
  if (step === 'lead-zero' && siUnit(state.plan.function) !== 'Ω') {
    return 'leads are zeroed where ohms are measured';
  }
  if (step === 'reference' && state.reference === null) {
    return 'no reference is known; begin with --reference VALUE,PERCENT';
  }
  return null;
};

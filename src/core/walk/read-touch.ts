// The present touch as the settle test sees it at this bench and this pin.
import type { PlannedPin } from '../profile/plan.js';
import { coarseStep, resolutionAt } from './display-step.js';
import { type Settle, type SettleDemands, settle } from './settle.js';
import type { WalkState } from './state.js';
import { contactFloor } from './usable.js';
import { pinInReach } from './whereabouts.js';

/** Probability before any reading that a line charges slowly. Common practice, no source. */
const slowSupply = 0.4;
const slowSignal = 0.01;
const slowGround = 0.001;

export const readTouch = (state: WalkState, demands?: SettleDemands): Settle => {
  const { contact, noise, plan } = state;
  const value = contact.touch?.creep.last ?? 0;
  const context = {
    noise,
    resolution: resolutionAt(state, value),
    floor: contactFloor(plan.function),
    coarse: coarseStep(state, value)?.by ?? null,
    slow: slownessAt(pinInReach(state)),
  };
  return settle(contact, context, demands);
};

const slownessAt = (pin: PlannedPin | undefined): number => {
  if (pin?.charges === true) return slowSupply;
  return pin?.kind === 'ground' ? slowGround : slowSignal;
};

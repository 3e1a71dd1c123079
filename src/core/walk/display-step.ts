// How finely the display shows what it shows, and whether it could do better: autorange begins on a coarse range.

import { inferResolution } from '../measure/accuracy-row.js';
import { siUnit } from '../reading.js';
import { settleTolerance } from './settle.js';
import type { WalkState } from './state.js';
import { contactFloor } from './usable.js';
import { pinInReach } from './whereabouts.js';

/** One step of the last digit at a value, as the meter tells it or as its counts let expect. */
export const resolutionAt = (state: WalkState, value: number): number => {
  const { reading } = state;
  const range = reading !== null && 'range' in reading ? reading.range : undefined;
  return (
    toldResolution(state) ?? inferResolution(state.accuracy, state.plan.function, value, range)
  );
};

export interface CoarseStep {
  readonly step: number;
  /** Told by the meter, or seen in the digits of its readings only. */
  readonly by: 'told' | 'seen';
}

/** The display's step where it is coarser than it could be and not known to stay so, or null. */
export const coarseStep = (state: WalkState, value: number): CoarseStep | null => {
  const { accuracy, contact, plan, trustedStep } = state;
  const told = toldResolution(state);
  const step = told ?? seenStep(state, contact.touch?.step ?? 0);
  const finest = inferResolution(accuracy, plan.function, value, undefined);
  const matters = step > 5 * finest && step > settleTolerance(value, finest);
  return matters && step > trustedStep ? { step, by: told === undefined ? 'seen' : 'told' } : null;
};

/**
 * The step seen in the digits. Zero has none: it may be all that a coarse range shows of a line, but not of
 * ground. Volts have one range.
 */
const seenStep = (state: WalkState, step: number): number => {
  if (siUnit(state.plan.function) === 'V') return 0;
  if (Number.isFinite(step)) return step;
  return pinInReach(state)?.kind === 'ground' ? 0 : contactFloor(state.plan.function) * 3;
};

const toldResolution = ({ reading }: WalkState): number | undefined =>
  reading !== null && 'resolution' in reading ? reading.resolution : undefined;

// Whether a touch has settled: enough readings over enough time, the creep that is left under half a percent,
// and the scatter explained by the meter. What the verdict needs on top is asked elsewhere.

import type { Contact } from './contact.js';
import { assessCreep, type CreepState } from './creep.js';
import { type Noise, noiseAt, noiseWeight } from './noise.js';

/** Creep that may be left at a capture, as a fraction of the reading (design decision). */
export const remainderLimit = 0.005;
/** A neighbour touched on the way lasts a reading or about 0.1 s: less than this is never a capture. */
const leastSpanS = 0.2;
const surely = 0.95;
/** Scatter beyond this share of the reading is a contact that does not hold still. */
const mostScatter = 0.015;
/** Seconds a touch may go on without settling or charging before it is called a wobble. */
const wobbleAfterS = 5;

export interface SettleContext {
  readonly noise: Noise;
  readonly resolution: number;
  /** Differences under this mean nothing, in the reading's unit: contact resistance, pick-up. */
  readonly floor: number;
  /** Probability beforehand that the line charges slowly. */
  readonly slow: number;
}

export type Settle =
  | { readonly phase: 'air' | 'landing' | 'resting' }
  | ({ readonly phase: 'creeping' | 'charging' | 'wobbling' | 'settled' } & CreepState);

/** The state of the present touch. */
export const settle = (contact: Contact, context: SettleContext): Settle => {
  const { touch } = contact;
  if (touch === null) return { phase: contact.rest === null ? 'air' : 'resting' };
  const { creep } = touch;
  if (creep.n < 2) return { phase: 'landing' };

  const { noise, resolution, floor } = context;
  const state = assessCreep(
    creep,
    {
      noise: noiseAt(noise, creep.last, resolution, floor / 10),
      noiseWeight: noiseWeight(noise),
      slow: context.slow,
    },
    settleTolerance(creep.last, context),
  );
  const span = creep.lastT - creep.startT;
  const still = state.scatter <= Math.max(mostScatter * Math.abs(state.level), floor, resolution);
  if (still && span >= leastSpanS && touch.odd === null && state.settled >= surely) {
    return { phase: 'settled', ...state };
  }
  if (state.charging > 0.5) return { phase: 'charging', ...state };
  return { phase: !still && span > wobbleAfterS ? 'wobbling' : 'creeping', ...state };
};

/** What may be left to creep, in the reading's unit. */
export const settleTolerance = (
  value: number,
  context: Pick<SettleContext, 'resolution' | 'floor'>,
): number => Math.max(remainderLimit * Math.abs(value), context.resolution, context.floor / 2);

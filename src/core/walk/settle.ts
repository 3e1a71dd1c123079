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
/** Scatter beyond this share of the reading, and beyond what the bench's noise explains, is no settled reading. */
const mostScatter = 0.007;
const mostNoise = 3;
/** Seconds a touch may go on without settling or charging before it is called a wobble. */
const wobbleAfterS = 6;

/** Autorange shows a coarse range first and may take this long to find the fine one. Common practice, no source. */
const rangingS = 2.2;

export interface SettleContext {
  readonly noise: Noise;
  readonly resolution: number;
  /** The display is coarser than it could be at this value: autorange may be under way. */
  readonly coarse: boolean;
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

  const { noise, resolution } = context;
  const tolerance = settleTolerance(creep.last, context);
  const expected = noiseAt(noise, creep.last, resolution);
  const state = assessCreep(
    creep,
    {
      noise: expected,
      noiseWeight: noiseWeight(noise),
      slow: context.slow,
    },
    tolerance,
  );
  const span = creep.lastT - creep.startT;
  const still =
    state.scatter <=
    Math.max(mostScatter * Math.abs(state.level), mostNoise * expected, resolution);
  if (
    still &&
    span >= (context.coarse ? rangingS : leastSpanS) &&
    touch.odd === null &&
    state.settled >= surely
  ) {
    return { phase: 'settled', ...state };
  }
  if (state.charging > 0.5) return { phase: 'charging', ...state };
  const restless = !still && span > wobbleAfterS && Math.abs(state.remainder) < state.scatter;
  return { phase: restless ? 'wobbling' : 'creeping', ...state };
};

/** What may be left to creep, in the reading's unit. */
export const settleTolerance = (
  value: number,
  { resolution }: Pick<SettleContext, 'resolution'>,
): number => Math.max(remainderLimit * Math.abs(value), resolution);

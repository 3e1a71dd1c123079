// Whether a touch has settled: enough readings over enough time, the creep that is left under half a percent, a
// level that is hardly wrong, and the scatter explained by the meter. What the verdict needs on top is asked
// elsewhere.
import { type Contact, isSurelySlip } from './contact.js';
import { baseMark } from './creep-base.js';
import { assessCreep, type CreepState } from './creep-state.js';
import { type Noise, noiseAt, noiseWeight } from './noise.js';
import type { Touch } from './touch.js';

/** Creep that may be left at a capture, as a fraction of the reading (design decision). */
const remainderLimit = 0.005;
/** A level off by more than this is a wrong capture, as a fraction of the reading. */
const errorLimit = 0.015;
/** A neighbour touched on the way lasts a reading or about 0.1 s: less than this is never a capture. */
const leastSpanS = 0.2;
/** A rub of the probe reads something steady, for as long as a slip lasts: doubt what was jumped to or slipped to. */
const leastDoubtfulS = 0.5;
/** Scatter beyond this share of the reading, and beyond what the bench's noise explains, is no settled reading. */
const mostScatter = 0.007;
const mostNoise = 3;
/**
 * The same for the readings of the touch alone: much experience of a quiet bench must not drown a few that lie apart,
 * as where a slip has spoiled the creep.
 */
const mostApart = 0.01;
/** Beginning anew so often within one contact, and every so many seconds, is no landing any more. */
const restlessRestarts = 4;
const restlessEveryS = 1.5;
const leastRestlessS = 2;
/** Seconds a touch may go on without settling or charging before it is called a wobble. */
const wobbleAfterS = 6;
/**
 * Autorange shows a coarse range first and may take this long to find the fine one; less where only the digits
 * suggest that. Common practice, no source.
 */
const rangingS = { told: 2.2, seen: 1 } as const;

export interface SettleContext {
  readonly noise: Noise;
  readonly resolution: number;
  /** The smallest difference that means anything, in the reading's unit. */
  readonly floor: number;
  /** The display is coarser than it could be at this value, as the meter tells or its digits suggest. */
  readonly coarse: 'told' | 'seen' | null;
  /** Probability beforehand that the line charges slowly. */
  readonly slow: number;
}

export type Settle =
  | { readonly phase: 'air' | 'landing' | 'resting' }
  | ({ readonly phase: 'creeping' | 'charging' | 'wobbling' | 'settled' } & CreepState);

/** A touch is looked at this often, seconds and share of its age, for looking costs time. */
const lookEveryS = 0.05;
const lookShare = 0.06;
/** A line that still moves by this share within the late part of its touch has not settled. */
const movesYet = 0.12;

/**
 * False where a look at the touch could not find it settled (or wobbling) yet, or hardly anything new since the
 * last reading. Cheap, for it is asked for every reading of a touch.
 */
export const mayHaveSettled = (
  { gap, clock }: Contact,
  touch: Touch,
  noise: Noise,
  floor: number,
): boolean => {
  const { creep, odd } = touch;
  const ageS = creep.lastT - creep.startT;
  if (odd !== null || creep.n < 2 || ageS < leastSpanS) return false;
  if (look(ageS) === look(ageS - clock.periodS)) return false;
  if (creep.lastT - touch.since > wobbleAfterS) return true;
  if (ageS < leastDoubtfulS && (touch.jumped || isSurelySlip({ gap, clock }))) return false;
  const moved = Math.abs(creep.last - baseMark(creep).value);
  return moved <= movesYet * Math.abs(creep.last) + 6 * noiseAt(noise, creep.last, 0) + floor;
};

/** Number of the look that is due at an age. */
const look = (ageS: number): number => {
  const evenly = lookEveryS / lookShare;
  return ageS < evenly
    ? Math.floor(ageS / lookEveryS)
    : Math.floor((1 + Math.log(ageS / evenly)) / lookShare);
};

/** How sure a capture must be: while the probe rests there waiting costs little, once it has left nothing more comes. */
export interface SettleDemands {
  readonly settled: number;
  readonly astray: number;
  /** Seconds that were read. */
  readonly spanS: number;
}

const whileTouching: SettleDemands = { settled: 0.9, astray: 0.002, spanS: leastSpanS };
/** A touch held for so long was no brush on the way: whoever left it took it for settled. */
export const atDeparture: SettleDemands = { settled: 0.5, astray: 0.01, spanS: 1 };

/** The state of the present touch. */
export const settle = (
  contact: Contact,
  context: SettleContext,
  demands: SettleDemands = whileTouching,
): Settle => {
  const { touch } = contact;
  if (touch === null) return { phase: contact.rest === null ? 'air' : 'resting' };
  const { creep } = touch;
  if (creep.n < 2) return { phase: 'landing' };

  const { noise, resolution } = context;
  const expected = noiseAt(noise, creep.last, resolution);
  const state = assessCreep(
    creep,
    { noise: expected, noiseWeight: noiseWeight(noise), slow: context.slow },
    {
      remainder: settleTolerance(creep.last, resolution),
      error: Math.max(errorLimit * Math.abs(creep.last), 2 * resolution),
      slow: Math.max(0, context.floor - Math.abs(creep.last) / 4) / 3,
    },
  );
  const span = creep.lastT - creep.startT;
  const explained = Math.max(mostNoise * expected, resolution, context.floor / 10);
  const apart = Math.sqrt(state.residualSquares / Math.max(1, state.used - 1));
  const still =
    state.scatter <= Math.max(mostScatter * Math.abs(state.level), explained) &&
    apart <= Math.max(mostApart * Math.abs(state.level), explained);
  if (
    still &&
    span >= Math.max(demands.spanS, leastSpan(contact, touch, context)) &&
    (touch.odd === null || demands === atDeparture) &&
    state.settled >= demands.settled &&
    state.astray <= demands.astray
  ) {
    return { phase: 'settled', ...state };
  }
  if (state.charging > 0.5) return { phase: 'charging', ...state };
  const restless =
    creep.lastT - touch.since > wobbleAfterS &&
    (isRestless(touch) || (!still && Math.abs(state.remainder) < state.scatter));
  return { phase: restless ? 'wobbling' : 'creeping', ...state };
};

const isRestless = ({ restarts, since, creep }: Touch): boolean =>
  restarts >= restlessRestarts && creep.lastT - since < restlessEveryS * restarts;

const leastSpan = (contact: Contact, touch: Touch, { coarse }: SettleContext): number => {
  // A few near readings in a reading that jumps about are chance.
  if (isRestless(touch)) return leastRestlessS;
  if (coarse !== null) return rangingS[coarse];
  return touch.jumped || isSurelySlip(contact) ? leastDoubtfulS : leastSpanS;
};

/** What may be left to creep, in the reading's unit. */
export const settleTolerance = (value: number, resolution: number): number =>
  Math.max(remainderLimit * Math.abs(value), resolution);

// What can be at fault on one board, and where along which line: the ground on which verdicts, press findings
// and probes are weighed. Plain data, built once from a profile.

import type { MeasureFunction } from '../reading.js';
import type { ExpectedBounds } from '../verdict.js';
import type { FaultMode } from './fault-modes.js';
import type { Lead } from './priors.js';

/** A place that can be at fault, each in one mode at a time, independent of every other place beforehand. */
export interface Suspect {
  readonly index: number;
  readonly where: 'joint' | 'part' | 'chip' | 'other';
  readonly id: string;
  /** The lines that its fault touches. */
  readonly lines: readonly string[];
  /** Pressing one of these acts on it. */
  readonly pressedAt: readonly string[];
  /** Prior of each mode; what is missing to 1 is that the place is sound. */
  readonly modes: readonly { readonly mode: FaultMode; readonly prior: number }[];
}

/** A suspect's place on a route. */
export interface Seat {
  readonly suspect: number;
  /** Index of the stop; an `entry` is the joint of one pin, before the first stop. */
  readonly at: number;
  readonly sits: 'series' | 'branch' | 'entry';
  /** For an entry: its pin. */
  readonly pin: string | null;
}

export interface RouteStop {
  readonly kind: 'joint' | 'part' | 'chip' | 'branch';
  readonly id: string;
}

/** What a branch alone would read: its ohms or volts, or null where only its kind is known. */
export interface Branch {
  readonly at: number;
  readonly part: string;
  readonly reads: number | null;
  readonly kind: string;
}

/** The way from one pin, or from the pins of one line, to the chip. */
export interface Route {
  readonly index: number;
  readonly line: string;
  readonly pins: readonly string[];
  readonly expected: ExpectedBounds;
  readonly shortLimit: number;
  readonly isGround: boolean;
  readonly stops: readonly RouteStop[];
  readonly branches: readonly Branch[];
  readonly seats: readonly Seat[];
}

export interface SuspectModel {
  readonly measure: MeasureFunction;
  readonly connector: string;
  readonly suspects: readonly Suspect[];
  readonly routes: readonly Route[];
  /** Suspects on more than one route; the routes are independent once these are known. */
  readonly shared: ReadonlySet<number>;
  /** Probability that each lead fails before any one reading. */
  readonly leads: Readonly<Record<Lead, number>>;
  readonly noise: Noise;
  /** Shared faults left out because too many lines hang together to weigh them all. Most often empty. */
  readonly leftOut: readonly string[];
}

/** How often an observation misleads. */
export interface Noise {
  /** A sound pin reads nothing, for the probe was not on it, although it was touched again before the verdict. */
  readonly missedPin: number;
  /** The same on a terminal or a track along the line, touched once. */
  readonly missedPlace: number;
  /** Any other verdict that does not fit what is there, all together. */
  readonly misjudged: number;
  /** A press test finds a joint that answers, where none does or another way. */
  readonly falselyAnswers: number;
  /** A press test ends as steady in a way that it is not. */
  readonly missesAnswer: number;
  /** The board flexes: pressing anywhere acts on the whole line. A press on bare board tells. */
  readonly flexes: number;
}

/** Common practice, no source; for the press test what its benchmark has to reach. */
export const defaultNoise: Noise = {
  missedPin: 0.003,
  missedPlace: 0.01,
  misjudged: 0.002,
  falselyAnswers: 0.001,
  missesAnswer: 0.005,
  flexes: 0.05,
};

/** States of a suspect: sound, or at fault in one of its modes. */
export const statesOf = ({ suspects }: SuspectModel, suspect: number): number =>
  1 + (suspects[suspect]?.modes.length ?? 0);

/** Probability beforehand that the suspect is at fault. */
export const priorOf = ({ suspects }: SuspectModel, suspect: number): number =>
  (suspects[suspect]?.modes ?? []).reduce((sum, { prior }) => sum + prior, 0);

/** Suspects with a seat on more than one route. */
export const sharedBy = (routes: readonly Route[]): ReadonlySet<number> => {
  const seen = new Map<number, number>();
  const shared = new Set<number>();
  for (const { index, seats } of routes)
    for (const { suspect } of seats) {
      const first = seen.get(suspect);
      if (first === undefined) seen.set(suspect, index);
      else if (first !== index) shared.add(suspect);
    }
  return shared;
};

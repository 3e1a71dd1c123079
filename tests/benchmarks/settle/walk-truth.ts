// What really happened in a generated walk: the truth a program's events are held against.

import type { Input } from '../../../src/core/inputs.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import type { Verdict } from '../../../src/core/verdict.js';

export const conditions = [
  'healthy',
  'open',
  'short',
  'leaky',
  'raised',
  'near-limit',
  'on-limit',
  'expected-overload',
  'value-where-none-belongs',
] as const;
export type Condition = (typeof conditions)[number];

export interface PinTruth {
  readonly pin: string;
  readonly line: string;
  readonly kind: Profile['lines'][string]['kind'];
  readonly condition: Condition;
  /** In ohm or volt; null where the line reads overload. */
  readonly value: number | null;
  /** Verdicts that are right, from the true value against the limits. */
  readonly right: readonly Verdict[];
  /** How the technician ends his stay at this pin. */
  readonly ends: 'one-touch' | 'two-touches' | 'next' | 'open';
}

/** One touch of the probe on one pin, slips included. */
export interface Contact {
  /** Place of the pin in walking order, from 0. */
  readonly index: number;
  readonly touch: 'hold' | 'neighbour';
  readonly start: number;
  readonly end: number;
  /** First moment at which what remains of the creep is under 0.5 %; null where nothing settles. */
  readonly settledAt: number | null;
  /** What this meter shows here once settled, without noise; null for overload. */
  readonly seen: number | null;
  readonly slips: readonly (readonly [from: number, to: number])[];
}

export interface Meter {
  readonly rate: number;
  readonly counts: number;
  /** Full scales from the lowest range up. */
  readonly fullScales: readonly number[];
  /** Shown as overload above this, whatever the range; null where only the top range ends it. */
  readonly overAt: number | null;
  readonly means: 'conductance' | 'display';
  readonly aperture: number;
  readonly noise: number;
  readonly gain: number;
  readonly offsetCounts: number;
  readonly drift: { readonly amplitude: number; readonly periodS: number; readonly phase: number };
  readonly ranging: 'unseen' | 'overload' | 'blank' | 'coarse';
  readonly rangingS: number;
  readonly tells: 'nothing' | 'resolution' | 'range';
  readonly burst: number;
}

/** What the program is told about the meter; null leaves it to its own assumption. */
export type ToldAccuracy = {
  readonly percent: number;
  readonly counts: number;
  readonly fullScaleCounts: number;
} | null;

export interface GeneratedWalk {
  readonly name: string;
  readonly profile: Profile;
  readonly meter: Meter;
  readonly told: ToldAccuracy;
  readonly pins: readonly PinTruth[];
  readonly contacts: readonly Contact[];
  readonly inputs: readonly Input[];
}

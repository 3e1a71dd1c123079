// How often each sort of place is at fault on a board that has come in for repair, before anything is read.
// A profile's own figures go first. The defaults are common practice, no source: rough rates of a board that
// has been reworked once, to be replaced by a shop's own closed sessions.
import type { FaultMode } from './fault-modes.js';

export type Sort =
  | 'joint'
  | 'pin-joint'
  | 'part'
  | 'part-on-line'
  | 'branch'
  | 'branch-on-line'
  | 'chip'
  | 'chip-on-line'
  | 'unnamed';

/** Probability that one place of this sort is at fault. */
export const defaultPriors: Readonly<Record<Sort, number>> = {
  joint: 0.004,
  /** Plugging and prying work on the connector's joints. */
  'pin-joint': 0.008,
  /** A part in the line, as a whole: torn off, cracked through. */
  part: 0.004,
  /** One way through a part that carries several lines. */
  'part-on-line': 0.001,
  branch: 0.001,
  'branch-on-line': 0.0005,
  chip: 0.0005,
  /** One ball or lead of a chip, with the input behind it. */
  'chip-on-line': 0.003,
  /** Track, via, or whatever else no chain names. */
  unnamed: 0.001,
};

/** A place at fault is in one of these modes; each row sums to 1. */
export const modeShares: Readonly<Record<Sort, Readonly<Partial<Record<FaultMode, number>>>>> = {
  joint: { broken: 0.42, loose: 0.35, cracked: 0.08, bridged: 0.04, shorted: 0.07, raised: 0.04 },
  'pin-joint': {
    broken: 0.47,
    loose: 0.35,
    cracked: 0.07,
    bridged: 0.03,
    shorted: 0.04,
    raised: 0.04,
  },
  part: { broken: 0.5, loose: 0.3, cracked: 0.06, shorted: 0.09, leaky: 0.02, raised: 0.03 },
  'part-on-line': { broken: 0.8, raised: 0.2 },
  branch: { shorted: 0.6, leaky: 0.4 },
  'branch-on-line': { shorted: 0.5, leaky: 0.5 },
  chip: { broken: 0.2, loose: 0.4, shorted: 0.2, leaky: 0.15, raised: 0.05 },
  'chip-on-line': {
    broken: 0.35,
    loose: 0.25,
    cracked: 0.05,
    shorted: 0.15,
    leaky: 0.14,
    raised: 0.06,
  },
  unnamed: { broken: 0.6, shorted: 0.2, leaky: 0.12, raised: 0.08 },
};

/** Probability that a lead fails before any one reading: about one walk of forty pins in twenty. */
export const leadHazards = { 'ground-clip': 0.0009, 'walking-lead': 0.0004 } as const;
export type Lead = keyof typeof leadHazards;
/** A later version may know more leads. */
export const isLead = (id: string): id is Lead => Object.hasOwn(leadHazards, id);

/** A lead that read nothing and then reads again has come back by itself: this share of the failures. */
export const comesBackShare = 0.2;

// What is left of a line under its faults: the steady reading from one pin, or from a place along the line, with one
// part pressed or none.
// Pure: no time, no creep. Null is no path at all.
import type { Profile } from '../core/profile/profile-format.js';
import type { MeasureFunction } from '../core/reading.js';
import { type Fault, placeOnChain } from './faults.js';

/** Typical test currents, which turn ohms into what a diode test shows and volts into ohms. Common practice, no source. */
export const diodeTestAmps = 0.001;
export const ohmsTestAmps = 0.0005;

/** A place along a line: a terminal of a part, the near one towards the pin, or the track before the chip. */
export interface Along {
  readonly part: string | null;
  readonly side: 'near' | 'far' | 'chip';
}

export interface PathAsked {
  readonly profile: Profile;
  readonly measure: MeasureFunction;
  readonly line: string;
  readonly pin: string;
  /** Where along the line the probe is; null on the pin. */
  readonly along: Along | null;
  /** What the line reads without faults. */
  readonly healthy: number | null;
  readonly faults: readonly Fault[];
  /** Is the fault's part pressed, or still sticking after a press? */
  readonly feels: (fault: Fault) => boolean;
}

export const steadyReading = (asked: PathAsked): number | null => {
  const { profile, line, pin, measure } = asked;
  const faults = asked.faults.filter((fault) => fault.line === line);
  if (measure === 'dc-volts') return 0;
  const from = asked.along === null ? 0 : gapAt(profile, line, asked.along);
  const isPinOpen = faults.some((f) => f.kind === 'open' && f.pin === pin);
  if (asked.along === null && isPinOpen) return null;

  let reading = asked.healthy;
  for (const fault of faults)
    if (fault.kind === 'drifted' && reading !== null) reading *= fault.factor;

  const breaks = faults.flatMap((fault) => breakAt(profile, fault, asked.feels(fault)));
  const ahead = breaks.filter((at) => at >= from);
  if (ahead.length > 0) {
    const behind = Math.max(-1, ...breaks.filter((at) => at < from));
    reading = branchesBetween(profile, line, behind + 1, Math.min(...ahead), measure);
  }

  for (const fault of faults) {
    if (fault.kind === 'short' || fault.kind === 'leaky')
      reading = beside(reading, fault.ohms, measure);
    if (fault.kind === 'bridged' && asked.feels(fault))
      reading = beside(reading, fault.ohms, measure);
  }
  return reading;
};

/** Where along the chain the fault breaks the line just now: nothing, or one index. */
const breakAt = (profile: Profile, fault: Fault, pressed: boolean): number[] => {
  if (fault.kind === 'open' && fault.pin === undefined)
    return [fault.at === undefined ? 0 : placeOnChain(profile, fault.line, fault.at)];
  if (fault.kind === 'loose' && !pressed) return [placeOnChain(profile, fault.line, fault.part)];
  if (fault.kind === 'cracked' && pressed) return [placeOnChain(profile, fault.line, fault.part)];
  return [];
};

/** How many stops of the chain lie between the pin and the place. */
const gapAt = (profile: Profile, line: string, { part, side }: Along): number => {
  const chain = profile.lines[line]?.chain ?? [];
  if (side === 'chip' || part === null) {
    const chip = chain.findLastIndex((stop) => 'chip' in stop);
    return chip < 0 ? chain.length : chip;
  }
  const at = placeOnChain(profile, line, part);
  if (at < 0) throw new RangeError(`the chain of ${line} has no part ${part}`);
  return side === 'near' ? at : at + 1;
};

/** Branches on the probe's side of the breaks still read; what they read is told for one function only. */
const branchesBetween = (
  profile: Profile,
  line: string,
  from: number,
  place: number,
  measure: MeasureFunction,
): number | null => {
  if (measure !== profile.measure.function) return null;
  let reading: number | null = null;
  for (const stop of (profile.lines[line]?.chain ?? []).slice(from, Math.max(from, place)))
    if ('shunt' in stop && stop.shunt.reads !== undefined)
      reading = parallel(reading, stop.shunt.reads, measure);
  return reading;
};

/** Adds a resistance to ground next to what the line reads. */
const beside = (reading: number | null, ohms: number, measure: MeasureFunction): number =>
  parallel(reading, measure === 'diode' ? ohms * diodeTestAmps : ohms, measure);

/** Two paths side by side: ohms add as conductances; of two junctions the lower drop shows. */
const parallel = (reading: number | null, other: number, measure: MeasureFunction): number => {
  if (reading === null) return other;
  if (measure === 'diode') return Math.min(reading, other);
  return 1 / (1 / reading + 1 / other);
};

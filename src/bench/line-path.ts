// What is left of a line under its faults: the steady reading from one pin with one part pressed or none.
// Pure: no time, no creep. Null is no path at all.
import type { Profile } from '../core/profile/profile-format.js';
import type { MeasureFunction } from '../core/reading.js';
import { type Fault, placeOnChain } from './faults.js';

/** Typical test currents, which turn ohms into what a diode test shows and volts into ohms. Common practice, no source. */
export const diodeTestAmps = 0.001;
export const ohmsTestAmps = 0.0005;

export interface PathAsked {
  readonly profile: Profile;
  readonly measure: MeasureFunction;
  readonly line: string;
  readonly pin: string;
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
  if (faults.some((f) => f.kind === 'open' && f.pin === pin)) return null;

  let reading = asked.healthy;
  for (const fault of faults)
    if (fault.kind === 'drifted' && reading !== null) reading *= fault.factor;

  const breaks = faults.flatMap((fault) => breakAt(profile, fault, asked.feels(fault)));
  if (breaks.length > 0) reading = branchesBefore(profile, line, Math.min(...breaks), measure);

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

/** Branches on the connector's side of the break still read; what they read is told for one function only. */
const branchesBefore = (
  profile: Profile,
  line: string,
  place: number,
  measure: MeasureFunction,
): number | null => {
  if (measure !== profile.measure.function) return null;
  let reading: number | null = null;
  for (const stop of (profile.lines[line]?.chain ?? []).slice(0, Math.max(0, place)))
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

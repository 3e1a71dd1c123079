// The faults a simulated board can have, as data, and what each does to the way from the pin to the chip.
// Refuses a fault on a line, pin or part the profile does not have, with the name in the message.
import type { Profile } from '../core/profile/profile-format.js';

export type Fault =
  /** A broken joint or part. With `pin`, the joint of that one pin; with `at`, that stop of the chain. */
  | { readonly kind: 'open'; readonly line: string; readonly pin?: string; readonly at?: string }
  | { readonly kind: 'short'; readonly line: string; readonly ohms: number }
  /** A resistance to ground beside the line's own, as dirt or a damaged protection part makes it. */
  | { readonly kind: 'leaky'; readonly line: string; readonly ohms: number }
  /** The line reads by this factor more or less than it should. */
  | { readonly kind: 'drifted'; readonly line: string; readonly factor: number }
  /** Open at rest, closed while the part is pressed and for `stickyS` after. */
  | {
      readonly kind: 'loose';
      readonly line: string;
      readonly part: string;
      readonly stickyS?: number;
    }
  /** Sound at rest, open while the part is pressed. */
  | { readonly kind: 'cracked'; readonly line: string; readonly part: string }
  /** Sound at rest, shorted while the part is pressed. */
  | {
      readonly kind: 'bridged';
      readonly line: string;
      readonly part: string;
      readonly ohms: number;
    }
  /** Charge left on the line, which drives a resistance reading below zero until it is discharged. */
  | { readonly kind: 'charged'; readonly line: string; readonly volts: number };

/** @throws RangeError naming the first fault that does not fit the profile. */
export const checkFaults = (profile: Profile, faults: readonly Fault[]): void => {
  for (const fault of faults) {
    if (!Object.hasOwn(profile.lines, fault.line))
      throw new RangeError(`fault ${fault.kind}: profile ${profile.id} has no line ${fault.line}`);
    if ('part' in fault && !Object.hasOwn(profile.parts ?? {}, fault.part))
      throw new RangeError(`fault ${fault.kind}: profile ${profile.id} has no part ${fault.part}`);
    if (fault.kind !== 'open') continue;
    const { pin, at, line } = fault;
    if (pin !== undefined && !profile.connector.pins.some((p) => p.pin === pin && p.line === line))
      throw new RangeError(`fault open: pin ${pin} does not carry ${line} in ${profile.id}`);
    if (at !== undefined && placeOnChain(profile, line, at) < 0)
      throw new RangeError(`fault open: the chain of ${line} has no stop ${at}`);
  }
};

/** Index of the joint, part or chip of that name along the line, or -1. */
export const placeOnChain = (profile: Profile, line: string, stop: string): number =>
  (profile.lines[line]?.chain ?? []).findIndex(
    (at) =>
      ('joint' in at && at.joint === stop) ||
      ('part' in at && at.part === stop) ||
      ('chip' in at && at.chip === stop),
  );

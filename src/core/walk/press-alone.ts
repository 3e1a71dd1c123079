// A session that is one press test and no walk, on the line and the parts that it names. Learns the meter's pace.
import type { EventOf } from '../events.js';
import { noUpdates, type Updates, updateSeconds, updateSeen } from '../press/update-interval.js';
import { isFault, type Reading } from '../reading.js';

export interface PressAlone {
  readonly pin: string;
  readonly line: string;
  /** Places to press, in order; empty: any, none is named. */
  readonly parts: readonly string[];
  readonly free: boolean;
  readonly updates: Updates;
}

export const openAlone = (asked: EventOf<'session-opened'>['pressAlone']): PressAlone | null =>
  asked === undefined ? null : { ...asked, updates: noUpdates };

export const seeAlone = (alone: PressAlone, reading: Reading): PressAlone =>
  isFault(reading) ? alone : { ...alone, updates: updateSeen(alone.updates, reading.t) };

/** The meter's period as far as it is known, seconds. */
export const periodOf = ({ updates }: PressAlone): number => updateSeconds(updates);

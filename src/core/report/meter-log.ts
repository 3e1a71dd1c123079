// What the meter said of itself, and how many readings of which kind came.
import type { EventOf, Numbered } from '../events.js';
import { isBlank, isFault, isOverload } from '../reading.js';

export interface MeterTold {
  readonly t: number;
  readonly says: 'error' | 'no-answer';
  readonly text: string;
}

export interface MeterLog {
  take(event: Numbered): void;
  /** Each name once, in the order in which they were given. */
  readonly identities: ReadonlySet<string>;
  readonly told: readonly MeterTold[];
  /** The latest reading of a known part. */
  readonly reference: EventOf<'reference-checked'> | null;
  readonly counts: {
    readonly values: number;
    readonly overloads: number;
    readonly blanks: number;
    readonly faults: number;
    /** Readings that came with the low battery sign. */
    readonly lowBattery: number;
  };
}

export const createMeterLog = (): MeterLog => {
  const identities = new Set<string>();
  const told: MeterTold[] = [];
  let reference: MeterLog['reference'] = null;
  const counts = { values: 0, overloads: 0, blanks: 0, faults: 0, lowBattery: 0 };
  return {
    identities,
    told,
    counts,
    get reference() {
      return reference;
    },
    take(event) {
      if (event.type === 'meter-spoke') {
        const { says, text, t } = event;
        if (says === 'identity') identities.add(text);
        else told.push({ t, says, text });
      } else if (event.type === 'reference-checked') {
        reference = event;
      } else if (event.type === 'reading-taken') {
        if (isFault(event)) counts.faults += 1;
        else if (isBlank(event)) counts.blanks += 1;
        else if (isOverload(event)) counts.overloads += 1;
        else counts.values += 1;
        if (!isFault(event) && event.flags?.includes('low-battery')) counts.lowBattery += 1;
      }
    },
  };
};

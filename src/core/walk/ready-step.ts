// One step with the leads before the walk begins, as far as it has come: what was read since the tips met.
import type { ReadyStep } from '../inputs.js';
import type { Plan } from '../profile/plan.js';
import { isOverload, isValue, type Reading, type ValueReading } from '../reading.js';
import { shownBy } from './shown.js';
import { isPlain } from './usable.js';

export interface Ready {
  readonly step: ReadyStep;
  /** Since the tips met, oldest first. */
  readonly seen: readonly ValueReading[];
  /** This contact was refused already: the next one counts. */
  readonly refused: boolean;
}

const mostSeen = 80;

export const askedReady = (step: ReadyStep): Ready => ({ step, seen: [], refused: false });

export const refusedNow = (ready: Ready | null): Ready | null =>
  ready === null ? null : { ...ready, refused: true };

/** The step after one more reading: a lift begins it anew. */
export const seeReady = (ready: Ready, plan: Plan, reading: Reading): Ready => {
  if (isOverload(reading)) return askedReady(ready.step);
  if (!isValue(reading) || !isPlain(plan, shownBy(reading))) return ready;
  return { ...ready, seen: [...ready.seen.slice(1 - mostSeen), reading] };
};

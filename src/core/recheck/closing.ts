// Whether a job may be closed as repaired: on a recheck that is good and was made after the last rework.
import type { EventOf } from '../events.js';
import type { ReworkState } from '../rework/rework-state.js';

export interface Rechecked {
  readonly compared: EventOf<'recheck-compared'> | null;
  /** Seconds of the first session's time at which the recheck began. */
  readonly t: number;
}

export type Doubt = 'no-recheck' | 'before-rework' | 'wait' | 'bad' | 'incomplete';

/** Null where the recheck bears it out. */
export const doubtAbout = (rework: ReworkState, recheck: Rechecked | null): Doubt | null => {
  if (recheck?.compared == null) return 'no-recheck';
  const work = rework.logged.filter(({ action }) => action !== 'inspect');
  if (work.some(({ t }) => t > recheck.t)) return 'before-rework';
  const { outcome } = recheck.compared;
  return outcome === 'good' ? null : outcome;
};

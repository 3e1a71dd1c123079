// A recheck as the report of the first session needs it: which file it is, when it was made, what it came to.
import type { EventOf, Numbered } from '../events.js';

export interface RecheckLog {
  /** The file's own name, without folders. */
  readonly file: string;
  /** 64 hex digits. */
  readonly fingerprint: string;
  readonly begins: string;
  readonly opened: EventOf<'session-opened'>;
  /** Seconds of the first session's time at which it began. */
  readonly t: number;
  /** The last comparison; null where it was not brought to an end. */
  readonly compared: EventOf<'recheck-compared'> | null;
}

export const lastCompared = (events: Iterable<Numbered>): EventOf<'recheck-compared'> | null => {
  let last: EventOf<'recheck-compared'> | null = null;
  for (const event of events) if (event.type === 'recheck-compared') last = event;
  return last;
};

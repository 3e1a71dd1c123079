// When things happened, for people. The session's own seconds are turned into wall time by whoever has a calendar.
import type { Day } from '../words/report-words.js';

export interface Times {
  /** Null where the session knows no wall time, as one made from a reading log. */
  dayOf(t: number): Day | null;
  /** `09:15`, or null. */
  hourOf(t: number): string | null;
  /** For tables: `09:15:30`, with the date where the session ran over several days, else seconds from its start. */
  momentOf(t: number): string;
  /** IANA name of the zone, or null. */
  readonly zone: string | null;
}

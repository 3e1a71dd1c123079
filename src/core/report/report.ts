// What a report is written from: the account of the session, what the file says of itself, a calendar.

import type { Day } from '../words/report-words.js';
import type { Account } from './account.js';
import type { RecheckLog } from './recheck-log.js';
import type { Times } from './times.js';

export interface Report {
  readonly account: Account;
  readonly times: Times;
  readonly source: {
    /** The file's own name, without folders. */
    readonly file: string;
    /** 64 hex digits. */
    readonly fingerprint: string;
    readonly events: number;
    /** Events of kinds that this version does not know. */
    readonly unknownEvents: number;
    /** Bytes of an unfinished last line. */
    readonly tornBytes: number;
  };
  /** Walks of what was in question after rework, oldest first. */
  readonly rechecks: readonly RecheckLog[];
  readonly made: { readonly program: string; readonly day: Day };
}

// The last words of a session and the program's exit code.
import { tallyPins } from '../core/walk/tally.js';
import { english } from '../core/words/english.js';
import { tallyOf } from '../core/words/shown.js';
import type { Journal } from '../session/ports.js';
import type { RunningSession, SessionEnd } from '../session/run-session.js';
import { complain } from './say.js';
import { exitCodes, UserError } from './user-error.js';

export interface Ended {
  readonly session: RunningSession;
  readonly journal: Journal;
  readonly path: string;
  /** Why the reading log could not be read, or null. */
  readonly badLog: string | null;
}

/** @throws UserError when the session did not end as its user would wish. */
export const reportEnd = (end: SessionEnd, { session, journal, path, badLog }: Ended): void => {
  const { state } = session;
  const tally =
    state.alone === null
      ? english.tally(tallyOf(tallyPins(state)))
      : english.pressTests(state.pressTests);
  complain(english.closed(tally, journal.fingerprint));
  complain(english.savedIn(path));
  if (badLog !== null) throw new UserError(badLog, exitCodes.badFile);
  switch (end.how) {
    case 'closed':
      if (session.state.link === 'lost') {
        throw new UserError(english.refusals.linkLost, exitCodes.noLink);
      }
      return;
    case 'no-link':
      throw new UserError(end.reason, exitCodes.noLink);
    case 'unwritten':
      throw new UserError(end.reason, exitCodes.unwritten);
  }
};

// The last words of a session and the program's exit code.
import { patientAlone } from '../core/walk/patient.js';
import type { WalkState } from '../core/walk/state.js';
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
  // A person at a terminal is told how the job goes on; a recheck goes on in the session that it names.
  if (process.stderr.isTTY && state.alone === null && state.recheck === null) {
    complain(english.goOnWith(wayOn(state), inQuotes(path)));
  }
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

const wayOn = (state: WalkState): Parameters<typeof english.goOnWith>[0] => {
  const { pins } = patientAlone(state);
  if (pins.some(({ verdict }) => verdict === 'unread')) return 'half-way';
  return pins.every(({ verdict }) => verdict === 'normal') ? 'normal' : 'findings';
};

/** As a shell takes it. */
const inQuotes = (path: string): string =>
  /^[\w./+:@%-]+$/u.test(path) ? path : `'${path.replaceAll("'", "'\\''")}'`;

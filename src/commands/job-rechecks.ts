// The rechecks of a job, on the time of its first session.
import type { EventOf, Numbered } from '../core/events.js';
import type { Rechecked } from '../core/recheck/closing.js';
import { findRechecks } from '../store/find-rechecks.js';
import { readSession } from '../store/journal-reader.js';
import { sessionBegins } from '../store/session-begins.js';
import { exitCodes, UserError } from './user-error.js';

export interface JobRecheck extends Rechecked {
  readonly path: string;
  readonly begins: string;
}

/** @throws UserError for a named file that is no recheck of the session; FileError for one that is not sound. */
export const rechecksOf = (
  session: string,
  opened: EventOf<'session-opened'>,
  named: readonly string[],
): readonly JobRecheck[] => {
  const begins = sessionBegins(session) ?? '';
  const paths = named.length > 0 ? named : findRechecks(session, begins);
  return paths.map((path) => {
    let compared: EventOf<'recheck-compared'> | null = null;
    let first: Numbered | undefined;
    for (const event of readSession(path)) {
      first ??= event;
      if (event.type === 'recheck-compared') compared = event;
    }
    if (first?.type !== 'session-opened' || first.recheck?.of.begins !== begins) {
      throw new UserError(`${path} is no recheck of ${session}`, exitCodes.badFile);
    }
    const t = (Date.parse(first.wallTime ?? '') - Date.parse(opened.wallTime ?? '')) / 1000;
    return {
      path,
      begins: sessionBegins(path) ?? '',
      compared,
      t: Number.isFinite(t) ? t : Number.POSITIVE_INFINITY,
    };
  });
};

// The rechecks of a job, on the time of its first session.
import { basename } from 'node:path';
import type { EventOf, Numbered } from '../core/events.js';
import { lastCompared, type RecheckLog } from '../core/report/recheck-log.js';
import { english } from '../core/words/english.js';
import { findRechecks } from '../store/find-rechecks.js';
import { readSession, type SessionEnd } from '../store/journal-reader.js';
import { sessionBegins } from '../store/session-begins.js';
import { exitCodes, UserError } from './user-error.js';

/**
 * Oldest first. @param named files to take instead of those that are found.
 * @throws UserError for a named file that is no recheck of the session; FileError for one that is not sound.
 */
export const rechecksOf = (
  session: string,
  opened: EventOf<'session-opened'>,
  named: readonly string[],
): readonly RecheckLog[] => {
  const begins = sessionBegins(session) ?? '';
  const paths = named.length > 0 ? named : findRechecks(session, begins);
  return paths
    .map((path) => readRecheck(path, session, opened, begins))
    .sort((one, other) => one.t - other.t);
};

const readRecheck = (
  path: string,
  session: string,
  first: EventOf<'session-opened'>,
  of: string,
): RecheckLog => {
  let end: SessionEnd | undefined;
  let opened: Numbered | undefined;
  function* all(): Generator<Numbered, void> {
    end = yield* readSession(path);
  }
  function* noted(): Generator<Numbered, void> {
    for (const event of all()) {
      opened ??= event;
      yield event;
    }
  }
  const compared = lastCompared(noted());
  if (opened?.type !== 'session-opened' || opened.recheck?.of.begins !== of) {
    throw new UserError(english.refusals.noRecheckOf(path, session), exitCodes.badFile);
  }
  const passedS = (Date.parse(opened.wallTime ?? '') - Date.parse(first.wallTime ?? '')) / 1000;
  return {
    file: basename(path),
    fingerprint: end?.chain ?? '',
    begins: sessionBegins(path) ?? '',
    opened,
    t: Number.isFinite(passedS) ? passedS : 0,
    compared,
  };
};

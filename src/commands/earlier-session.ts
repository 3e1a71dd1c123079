// A saved session as later work needs it: the walk as it ended and what was done since.
import { basename } from 'node:path';
import type { EventOf, Numbered } from '../core/events.js';
import type { RecheckHeader } from '../core/recheck/recheck-header.js';
import { evolveRework, noRework, type ReworkState } from '../core/rework/rework-state.js';
import { foldStored, openStored } from '../core/walk/fold-stored.js';
import type { WalkState } from '../core/walk/state.js';
import { readSession, type SessionEnd } from '../store/journal-reader.js';
import { sessionBegins } from '../store/session-begins.js';
import { refuseNoSession } from './named-session.js';

export interface EarlierSession {
  readonly opened: EventOf<'session-opened'>;
  readonly state: WalkState;
  readonly rework: ReworkState;
  /** As a later session names it. */
  readonly of: RecheckHeader['of'];
}

/** @throws FileError at the first line that is not sound; UserError where no session begins. */
export const readEarlier = (path: string): EarlierSession => {
  let end: SessionEnd | undefined;
  function* all(): Generator<Numbered, void> {
    end = yield* readSession(path);
  }
  let opened: EventOf<'session-opened'> | undefined;
  let state: WalkState | undefined;
  let rework = noRework;
  for (const event of all()) {
    if (event.type === 'session-opened') opened ??= event;
    if (opened === undefined) break;
    state = state === undefined ? openStored(opened) : foldStored(state, event);
    rework = evolveRework(rework, event);
  }
  const begins = sessionBegins(path);
  if (
    opened === undefined ||
    state === undefined ||
    begins === undefined ||
    end?.chain === undefined
  ) {
    return refuseNoSession(path);
  }
  const of = { file: basename(path), begins, fingerprint: end.chain };
  return { opened, state, rework, of };
};

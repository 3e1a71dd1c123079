// A saved session without the customer's data, line by line. Reads the file twice: its fingerprint goes into the
// first line.
import type { WalkEvent } from '../../core/events.js';
import { type RedactedLine, redactSession } from '../../core/share/redact-session.js';
import { chainStep } from '../../store/chain-step.js';
import { readSession } from '../../store/journal-reader.js';
import { refuseEmpty, refuseOtherKinds } from '../named-session.js';

/** The session's own fingerprint. @throws FileError, UserError for what is no whole session. */
export const fingerprintOf = (session: string): string => {
  refuseOtherKinds(session);
  const events = readSession(session);
  for (;;) {
    const { done, value } = events.next();
    if (done !== true) continue;
    if (value.chain !== undefined) return value.chain;
    return refuseEmpty(session);
  }
};

/** @throws FileError, UserError. */
export const redactedLines = (session: string): Generator<RedactedLine, void> => {
  const events: Iterable<WalkEvent> = readSession(session);
  return redactSession(events, fingerprintOf(session), chainStep, (line) => Buffer.from(line));
};

// A saved session without the customer's data, line by line. Reads the file twice: its fingerprint goes into the
// first line.
import type { WalkEvent } from '../../core/events.js';
import { type RedactedLine, redactSession } from '../../core/share/redact-session.js';
import { chainStep } from '../../store/chain-step.js';
import { readSession } from '../../store/journal-reader.js';
import { storedKind } from '../../store/stored-kind.js';
import { exitCodes, UserError } from '../user-error.js';

/** The session's own fingerprint. @throws FileError, UserError for what is no whole session. */
export const fingerprintOf = (session: string): string => {
  const kind = storedKind(session);
  if (kind !== undefined && kind !== 'session') {
    throw new UserError(`${session} is a ${kind}; name a saved session`, exitCodes.badFile);
  }
  const events = readSession(session);
  for (;;) {
    const { done, value } = events.next();
    if (done !== true) continue;
    if (value.chain !== undefined) return value.chain;
    throw new UserError(`${session}: the session holds nothing yet`, exitCodes.badFile);
  }
};

/** @throws FileError, UserError. */
export const redactedLines = (session: string): Generator<RedactedLine, void> => {
  const events: Iterable<WalkEvent> = readSession(session);
  return redactSession(events, fingerprintOf(session), chainStep, (line) => Buffer.from(line));
};

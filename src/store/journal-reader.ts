// Reads a session file, event by event, without ever holding all of it. Stops at the first line that is not
// sound. A torn last line is no damage: it is what a killed process or a power cut leaves, and is told at the end.
import type { Numbered } from '../core/events.js';
import type { Problem } from '../core/problems.js';
import { byteLines } from './byte-lines.js';
import { FileError } from './file-error.js';
import { LineFollower, type SessionEnd } from './line-follower.js';

export type { SessionEnd } from './line-follower.js';

export interface ReadOptions {
  /**
   * Whether each line is held against the chain (the default). Hashing doubles the time reading takes; a replay
   * that only shows may do without, and still refuses what is not whole or not in order.
   */
  readonly verifyChain?: boolean;
}

/** Yields every event of a known type. @throws FileError at the first line that is not sound. */
export const readSession = (
  path: string,
  { verifyChain = true }: ReadOptions = {},
): Generator<Numbered, SessionEnd, void> =>
  follow(path, verifyChain, (problem) => {
    throw new FileError(path, [problem]);
  });

/** Reads to the end whatever comes and hands every problem to `report`. @throws FileError when unreadable. */
export const checkSession = (path: string, report: (problem: Problem) => void): SessionEnd => {
  const events = follow(path, true, report);
  for (;;) {
    const { done, value } = events.next();
    if (done === true) return value;
  }
};

function* follow(
  path: string,
  verifyChain: boolean,
  report: (problem: Problem) => void,
): Generator<Numbered, SessionEnd, void> {
  const follower = new LineFollower(verifyChain, report);
  for (const line of byteLines(path)) {
    const event = follower.take(line);
    if (event !== undefined) yield event;
  }
  return follower.end();
}

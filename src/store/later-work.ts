// Later work on a stored session: what is done once the walk is over (an entry corrected, a rework, the closing of
// the job) is added at the end of its file, under the file's lock and on its chain. Nothing is rewritten.
import type { EventOf, Numbered, WalkEvent } from '../core/events.js';
import { programVersion } from '../core/version.js';
import type { Clock, Journal } from '../session/ports.js';
import { sessionTimeAt } from '../session/session-time.js';
import { FileError } from './file-error.js';
import { type ResumedJournal, resumeJournal } from './resume-journal.js';

export interface LaterWork {
  readonly opened: EventOf<'session-opened'>;
  /** What the file held before, in order, the header first. */
  readonly before: readonly Numbered[];
  /** For the technician, in words: what was found in the file. */
  readonly notices: readonly string[];
  /** Seconds of the session at this moment; never falls. */
  now(): number;
  /** Chain value over every line so far, 64 hex digits. */
  readonly fingerprint: string;
  /** The first call takes the session up again; without one the file stays as it is. */
  append(events: readonly WalkEvent[]): readonly Numbered[];
  /** Closes the session as it was closed before. @throws JournalError when it may not be whole on the disk. */
  close(): Promise<void>;
}

export interface LaterClock extends Pick<Clock, 'now'> {
  readonly wall: { readonly wallTime: string; readonly zone: string };
}

/** @throws FileError when there is no session or it is damaged; JournalError when it cannot be written. */
export const openLaterWork = (path: string, { wall, now }: LaterClock): LaterWork => {
  const { events: before, journal, tornBytes, notices } = resumeJournal(path);
  const opened = headerOf(path, before, journal);
  const startT = sessionTimeAt(before, Date.parse(wall.wallTime));
  const clockStart = now();
  const sessionNow = (): number => startT + now() - clockStart;
  let takenUp = false;
  const append = (events: readonly WalkEvent[]): readonly Numbered[] => {
    const first: readonly WalkEvent[] = takenUp
      ? []
      : [
          {
            type: 'session-resumed',
            t: startT,
            program: programVersion,
            tornBytes,
            work: 'record',
            ...wall,
          },
        ];
    const written = journal.append([...first, ...events]);
    takenUp = true;
    journal.sync();
    return written;
  };
  return {
    opened,
    before,
    notices,
    now: sessionNow,
    get fingerprint() {
      return journal.fingerprint;
    },
    append,
    close: async () => {
      if (takenUp)
        journal.append([{ type: 'session-closed', t: sessionNow(), reason: leftAs(before) }]);
      await journal.close();
    },
  };
};

const headerOf = (
  path: string,
  [opened]: ResumedJournal['events'],
  journal: Journal,
): EventOf<'session-opened'> => {
  if (opened?.type === 'session-opened') return opened;
  void journal.close();
  throw new FileError(path, [
    { path: [], what: 'no session begins here', fix: 'name a saved session' },
  ]);
};

/** A session that was never closed was left, whatever is added to it now. */
const leftAs = (before: readonly Numbered[]): EventOf<'session-closed'>['reason'] =>
  before.findLast((event) => event.type === 'session-closed')?.reason ?? 'left';

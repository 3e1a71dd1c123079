// Opens a session file to be played: reads it once, keeps where its stretches begin, and fetches a stretch when
// it is wanted. What is appended to the file later is not seen; a file that is changed meanwhile is refused.
import { closeSync, readSync } from 'node:fs';
import { EventLineError } from '../core/event-line.js';
import type { Numbered } from '../core/events.js';
import { indexSession, type SessionIndex } from '../core/replay/index-session.js';
import { type Recording, stretchEvents } from '../core/replay/recording.js';
import { byteLines } from './byte-lines.js';
import { EventLines } from './event-lines.js';
import { FileError } from './file-error.js';
import { LineFollower, type SessionEnd } from './line-follower.js';
import { openToRead } from './open-to-read.js';

export interface OpenRecording {
  readonly recording: Recording;
  readonly end: SessionEnd;
  close(): void;
}

/** Stretches kept as events: the one being played and the ones beside it. */
const keptStretches = 3;

/**
 * The chain is not computed: `check` does that, and it takes as long as all the rest.
 * @throws FileError at the first line that is not sound.
 */
export const openRecording = (path: string): OpenRecording => {
  const fd = openToRead(path);
  try {
    return openAt(path, fd);
  } catch (error) {
    closeSync(fd);
    throw error;
  }
};

const openAt = (path: string, fd: number): OpenRecording => {
  const follower = new LineFollower(false, (problem) => {
    throw new FileError(path, [problem]);
  });
  const offsets: number[] = [];
  let index: SessionIndex | undefined;
  let offset = 0;
  for (const line of byteLines(path)) {
    const event = follower.take(line);
    if (event !== undefined) {
      if (index === undefined && event.type === 'session-opened') index = indexSession(event);
      if (index?.take(event)) offsets.push(offset);
    }
    offset += line.to - line.from + 1;
  }
  const end = follower.end();
  if (index === undefined) throw changed(path);
  offsets.push(offset);

  const kept = new Map<number, readonly Numbered[]>();
  const recording = index.done((wanted) => {
    const known = kept.get(wanted);
    if (known !== undefined) return known;
    const [from, to] = [offsets[wanted] ?? offset, offsets[wanted + 1] ?? offset];
    const events = readEvents(path, fd, from, to);
    if (events.length !== Math.min(stretchEvents, recording.count - wanted * stretchEvents)) {
      throw changed(path);
    }
    kept.set(wanted, events);
    for (const oldest of kept.keys()) {
      if (kept.size <= keptStretches) break;
      kept.delete(oldest);
    }
    return events;
  });
  return { recording, end, close: () => closeSync(fd) };
};

const readEvents = (path: string, fd: number, from: number, to: number): Numbered[] => {
  const bytes = Buffer.allocUnsafe(to - from);
  let filled = 0;
  while (filled < bytes.length) {
    const read = readSync(fd, bytes, filled, bytes.length - filled, from + filled);
    // The last line may lack its newline.
    if (read === 0) break;
    filled += read;
  }
  return eventsIn(path, bytes.subarray(0, filled));
};

/** Passes over torn lines that were kept aside, and over events of types that this version does not know. */
const eventsIn = (path: string, bytes: Buffer): Numbered[] => {
  const lines = new EventLines();
  const events: Numbered[] = [];
  try {
    for (let from = 0; from < bytes.length; ) {
      const newline = bytes.indexOf('\n', from);
      const to = newline === -1 ? bytes.length : newline;
      const decoded = lines.decode(bytes, from, to, 1);
      if (decoded?.known) events.push(decoded.event);
      from = to + 1;
    }
  } catch (error) {
    if (error instanceof EventLineError) throw changed(path);
    throw error;
  }
  return events;
};

const changed = (path: string): FileError =>
  new FileError(path, [
    { path: [], what: 'the file was changed while it was played', fix: 'play it again' },
  ]);

// Follows a session file while another process writes it: each event is told once its line is whole. Knows nothing of
// the chain, and passes over what it cannot read: it listens, it does not check.
import { closeSync, openSync, readSync } from 'node:fs';
import { decodeLine, EventLineError } from '../core/event-line.js';
import type { Numbered } from '../core/events.js';

/** Seconds between two looks: much shorter than anyone's answer to a cue. */
const lookEveryS = 0.02;

/** Begins at the file's first line, as soon as the file is there. @returns what ends it. */
export const followGrowing = (path: string, tell: (event: Numbered) => void): (() => void) => {
  const buffer = Buffer.alloc(64 * 1024);
  let fd: number | null = null;
  let at = 0;
  let lines = 0;
  let rest = Buffer.alloc(0);

  const look = (): void => {
    fd ??= opened(path);
    if (fd === null) return;
    for (;;) {
      const read = readSync(fd, buffer, 0, buffer.length, at);
      if (read === 0) return;
      at += read;
      rest = Buffer.concat([rest, buffer.subarray(0, read)]);
      for (let end = rest.indexOf(newline); end >= 0; end = rest.indexOf(newline)) {
        const line = rest.toString('utf8', 0, end);
        rest = rest.subarray(end + 1);
        lines += 1;
        hear(line, lines, tell);
      }
    }
  };

  const timer = setInterval(look, 1000 * lookEveryS);
  return () => {
    clearInterval(timer);
    if (fd !== null) closeSync(fd);
    fd = null;
  };
};

const newline = 0x0a;

const opened = (path: string): number | null => {
  try {
    return openSync(path, 'r');
  } catch {
    return null;
  }
};

const hear = (line: string, number: number, tell: (event: Numbered) => void): void => {
  try {
    const decoded = decodeLine(line, number);
    if (decoded.known) tell(decoded.event);
  } catch (error) {
    if (!(error instanceof EventLineError)) throw error;
  }
};

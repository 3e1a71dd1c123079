// Cuts a file into lines at the byte 0x0A, before any decoding, in one pass and with memory for the longest line
// only. A line longer than any this program writes is refused.
import { closeSync, readSync } from 'node:fs';
import { FileError } from './file-error.js';
import { openToRead } from './open-to-read.js';

/** Where the current line lies. The generator hands out one such object, good until the next step. */
export interface ByteLine {
  buffer: Buffer;
  from: number;
  to: number;
  /** False for a last line without newline. */
  ended: boolean;
}

/** A header holds a whole profile; nothing else comes near this. */
const longestLine = 16 * 1024 * 1024;
const firstSize = 256 * 1024;
const newline = 0x0a;

/**
 * @param room to begin with; whoever reads many files, one at a time, gives the same for all of them.
 * @throws FileError
 */
export function* byteLines(path: string, room?: Buffer): Generator<ByteLine, void> {
  const fd = openToRead(path);
  try {
    yield* cut(path, fd, room ?? newRoom());
  } finally {
    closeSync(fd);
  }
}

/** Takes most files whole. */
export const newRoom = (): Buffer => Buffer.allocUnsafe(firstSize);

function* cut(path: string, fd: number, room: Buffer): Generator<ByteLine, void> {
  let buffer = room;
  let filled = 0;
  let count = 0;
  const line: ByteLine = { buffer, from: 0, to: 0, ended: true };
  for (;;) {
    if (filled === buffer.length) {
      if (filled >= longestLine) throw tooLong(path, count + 1);
      const larger = Buffer.allocUnsafe(filled * 2);
      buffer.copy(larger, 0, 0, filled);
      buffer = larger;
    }
    const read = readSync(fd, buffer, filled, buffer.length - filled, null);
    if (read === 0) break;
    const known = buffer.subarray(0, filled + read);
    line.buffer = buffer;
    line.from = 0;
    for (
      let to = known.indexOf(newline, filled);
      to !== -1;
      to = known.indexOf(newline, line.from)
    ) {
      line.to = to;
      count += 1;
      yield line;
      line.from = to + 1;
    }
    filled += read - line.from;
    buffer.copyWithin(0, line.from, line.from + filled);
  }
  if (filled === 0) return;
  line.buffer = buffer;
  line.from = 0;
  line.to = filled;
  line.ended = false;
  yield line;
}

const tooLong = (path: string, line: number): FileError => {
  const what = `the line is longer than ${longestLine / 1024 / 1024} MB`;
  return new FileError(path, [
    { path: [], line, what, fix: 'it is damaged here, or none of ours' },
  ]);
};

// What the sessions in a folder say of their boards, one file after the other, with memory for one line. Reads past
// the readings without looking into them and does not prove the chain: `check` does. A file that is no whole
// session is handed over as a problem and passed by.
import { opendirSync } from 'node:fs';
import { join } from 'node:path';
import {
  type BoardCase,
  type CaseReader,
  caseReader,
  tellingTypes,
} from '../core/history/board-case.js';
import { chainStart } from '../core/session-chain.js';
import { byteLines, newRoom } from './byte-lines.js';
import { chainStep } from './chain-step.js';
import { FileError } from './file-error.js';

export type ReadCase =
  | { readonly path: string; readonly case: BoardCase }
  | { readonly path: string; readonly problem: FileError };

/** @throws FileError when the folder cannot be read. */
export function* readCases(folder: string): Generator<ReadCase, void> {
  const room = newRoom();
  for (const path of sessionFiles(folder)) {
    try {
      yield { path, case: readCase(path, room) };
    } catch (error) {
      if (!(error instanceof FileError)) throw error;
      yield { path, problem: error };
    }
  }
}

function* sessionFiles(folder: string): Generator<string, void> {
  let entries: ReturnType<typeof opendirSync>;
  try {
    entries = opendirSync(folder);
  } catch {
    const fix = 'give a folder of sessions';
    throw new FileError(folder, [{ path: [], what: 'the folder cannot be read', fix }]);
  }
  try {
    for (let entry = entries.readSync(); entry !== null; entry = entries.readSync()) {
      if (entry.isFile() && entry.name.endsWith('.jsonl')) yield join(folder, entry.name);
    }
  } finally {
    entries.closeSync();
  }
}

/** @throws FileError with the line where it is not sound. */
export const readCase = (path: string, room?: Buffer): BoardCase => {
  let reader: CaseReader | undefined;
  let count = 0;
  let torn: number | undefined;
  const refuse = (line: number, what: string): FileError =>
    new FileError(path, [{ path: [], line, what, fix: 'look at it with `pinwalk check`' }]);
  for (const { buffer, from, to } of byteLines(path, room)) {
    count += 1;
    const type = typeAt(buffer, from, to);
    if (type === undefined) {
      // Only what a lost program left unfinished may be no event: the last line, or one that was taken up again.
      if (torn !== undefined) throw refuse(torn, 'the line is not one whole event');
      torn = count;
      continue;
    }
    if (torn !== undefined && type !== 'session-resumed') {
      throw refuse(torn, 'the line is not one whole event');
    }
    torn = undefined;
    if (reader !== undefined && !tellingTypes.has(type)) continue;
    const event = parse(buffer.toString('utf8', from, to));
    if (event === undefined) {
      torn = count;
    } else if (reader === undefined) {
      try {
        reader = caseReader(event, chainStep(chainStart, buffer, from, to));
      } catch (error) {
        if (!(error instanceof RangeError)) throw error;
        throw refuse(count, error.message);
      }
    } else reader.take(event);
  }
  if (reader === undefined) throw refuse(1, 'there is no session in it');
  return reader.done();
};

const mark = Buffer.from('"type":"');
/** `"seq"` and `"t"` come before the type and are numbers. */
const furthest = 80;

/** The event's type, without parsing it; undefined where the line does not begin as an event does. */
const typeAt = (buffer: Buffer, from: number, to: number): string | undefined => {
  if (to - from < 2 || buffer[from] !== 0x7b || buffer[to - 1] !== 0x7d) return undefined;
  const at = buffer.indexOf(mark, from);
  if (at === -1 || at > from + furthest) return undefined;
  const begin = at + mark.length;
  const end = buffer.indexOf(0x22, begin);
  return end === -1 || end >= to ? undefined : buffer.toString('latin1', begin, end);
};

const parse = (text: string): Readonly<Record<string, unknown>> | undefined => {
  try {
    return JSON.parse(text) as Readonly<Record<string, unknown>>;
  } catch {
    return undefined;
  }
};

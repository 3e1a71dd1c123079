// The rechecks of a session: files whose header names it, beside it or where new sessions go.
import { existsSync, readdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { decodeLine, EventLineError } from '../core/event-line.js';
import type { EventOf } from '../core/events.js';
import type { ChainValue } from '../core/session-chain.js';
import { byteLines } from './byte-lines.js';
import { FileError } from './file-error.js';
import { sessionFolder } from './session-paths.js';

/** Paths by folder and name, which begins with the time for files the program named. @param begins of the session. */
export const findRechecks = (
  session: string,
  begins: ChainValue,
  usualFolder: string = sessionFolder(),
): readonly string[] =>
  [...new Set([dirname(resolve(session)), resolve(usualFolder)])]
    .filter((folder) => existsSync(folder))
    .flatMap(sessionFilesIn)
    .filter((path) => path !== resolve(session) && headerOf(path)?.recheck?.of.begins === begins);

const sessionFilesIn = (folder: string): readonly string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.jsonl'))
    .sort()
    .map((name) => join(folder, name));

/** The first event, if it is a session's header; whatever else lies in the folder is none of our business. */
const headerOf = (path: string): EventOf<'session-opened'> | undefined => {
  try {
    for (const { buffer, from, to } of byteLines(path)) {
      const { event, known } = decodeLine(buffer.toString('utf8', from, to), 1);
      return known && event.type === 'session-opened' ? event : undefined;
    }
  } catch (error) {
    if (!(error instanceof EventLineError) && !(error instanceof FileError)) throw error;
  }
  return undefined;
};

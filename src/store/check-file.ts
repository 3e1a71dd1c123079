// Checks one file of any kind this program reads: tells by the content what it is, and gives every problem with
// its line and its fix. Refuses nothing; a file that is none of ours is a problem like another.
import { type DefinitionKind, readDefinition } from '../core/definition/read-definition.js';
import { isError, type Problem } from '../core/problems.js';
import { createLogParser, LogError } from '../core/reading-log.js';
import { byteLines } from './byte-lines.js';
import { FileError } from './file-error.js';
import { checkSession } from './journal-reader.js';
import { driverKind, profileKind } from './load-definitions.js';
import { readAtMost, readTextFile } from './read-text-file.js';


export interface FileCheck {
  /** Undefined when the file is none of ours, or cannot be read. */
  readonly kind: StoredKind | undefined;
  /** In the order of the file; at most a hundred, the first ones. */
  readonly problems: readonly Problem[];
  /** Lines in a session or log. */
  readonly lines?: number;
  /** Of a session whose chain holds: 64 hex digits. */
  readonly fingerprint?: string;
}

export const checkFile = (path: string): FileCheck => {
  try {
    const kind = fileKindOf(path);
    switch (kind) {
      case 'driver':
        return { kind, problems: checkDefinition(driverKind, path) };
      case 'profile':
        return { kind, problems: checkDefinition(profileKind, path) };
      case 'session':
        return { kind, ...checkSessionFile(path) };
      case 'reading log':
        return { kind, ...checkLog(path) };
      default:
        return { kind, problems: checkUnknown(path) };
    }
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    return { kind: undefined, problems: error.problems };
  }
};

const mostProblems = 100;

const checkUnknown = (path: string): readonly Problem[] => {
  const { text } = readTextFile(path);
  const isJson = /^\s*[{[]/u.test(text);
  const what = 'this is no driver, profile, session or reading log of pinwalk';
  const fix = isJson ? 'a driver or profile begins with its "format"' : 'give another file';
  return [{ path: [], what, fix }];
};

const checkDefinition = <T>(kind: DefinitionKind<T>, path: string): readonly Problem[] =>
  readDefinition(kind, readTextFile(path).text).problems;

const checkSessionFile = (path: string): Omit<FileCheck, 'kind'> => {
  const problems: Problem[] = [];
  const { tornBytes, tornLine, lines, chain } = checkSession(path, (problem) => {
    if (problems.length < mostProblems) problems.push(problem);
  });
  if (tornBytes > 0 && !problems.some(isError)) {
    problems.push({
      level: 'warning',
      path: [],
      ...(tornLine === undefined ? {} : { line: tornLine }),
      what: `the last event was never finished; ${tornBytes} bytes of it are there`,
      fix: 'nothing before it is lost; `pinwalk walk --resume` goes on from here and keeps them',
    });
  }
  problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  return { problems, lines, ...(chain === undefined ? {} : { fingerprint: chain }) };
};

const checkLog = (path: string): Omit<FileCheck, 'kind'> => {
  const problems: Problem[] = [];
  const parse = createLogParser();
  let lines = 0;
  for (const { buffer, from, to } of byteLines(path)) {
    lines += 1;
    try {
      parse(buffer.toString('utf8', from, to));
    } catch (error) {
      if (!(error instanceof LogError)) throw error;
      if (problems.length < mostProblems) problems.push(problemOfLog(error));
    }
  }
  return { problems, lines };
};

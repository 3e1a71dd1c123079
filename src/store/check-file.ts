// Checks one file of any kind this program reads: tells by the content what it is, and gives every problem with
// its line and its fix. Refuses nothing; a file that is none of ours is a problem like another.
import { type DefinitionKind, readDefinition } from '../core/definition/read-definition.js';
import { isError, type Problem } from '../core/problems.js';
import { profileKind } from '../core/profile/read-profile.js';
import { createLogParser, LogError } from '../core/reading-log.js';
import { byteLines } from './byte-lines.js';
import { FileError } from './file-error.js';
import { checkSession } from './journal-reader.js';
import { driverKind } from './load-definitions.js';
import { problemOfLog } from './log-problem.js';
import { readAtMost, readTextFile } from './read-text-file.js';

export const fileKinds = ['driver', 'profile', 'session', 'reading log'] as const;
export type FileKind = (typeof fileKinds)[number];

export interface FileCheck {
  /** Undefined when the file is none of ours, or cannot be read. */
  readonly kind: FileKind | undefined;
  /** In the order of the file; at most a hundred, the first ones. */
  readonly problems: readonly Problem[];
  /** In a session or log. */
  readonly lines?: number;
  /** In a session: events of types this version does not know. */
  readonly unknownEvents?: number;
  /** Of a session whose chain holds: 64 hex digits, to be held against the noted ones. */
  readonly fingerprint?: string;
}

const mostProblems = 100;

export const checkFile = (path: string): FileCheck => {
  try {
    const kind = fileKindOf(path);
    switch (kind) {
      case 'driver':
        return checkDefinition(kind, driverKind, path);
      case 'profile':
        return checkDefinition(kind, profileKind, path);
      case 'session':
        return checkSessionFile(path);
      case 'reading log':
        return checkLog(path);
      default:
        return checkUnknown(path);
    }
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    return { kind: undefined, problems: error.problems };
  }
};

const beginning = 64 * 1024;

/**
 * By marks that survive damage and slips: any of the first lines will do for a session or log. Undefined for a
 * file that is none of ours. @throws FileError when it cannot be read.
 */
export const fileKindOf = (path: string): FileKind | undefined => {
  const text = readAtMost(path, beginning).toString('utf8');
  if (/^\s*\{\s*"seq"\s*:/mu.test(text)) return 'session';
  if (/"format"\s*:\s*"pinwalk-driver\//u.test(text)) return 'driver';
  if (/"format"\s*:\s*"pinwalk-profile\//u.test(text)) return 'profile';
  const isLog = /^\s*\{(?=.*"t"\s*:)(?=.*"(?:function|mark|fault|blank)"\s*:)/mu.test(text);
  if (isLog) return 'reading log';
  if (/"(?:wire|talk)"\s*:/u.test(text)) return 'driver';
  return /"(?:connector|lines)"\s*:/u.test(text) ? 'profile' : undefined;
};

const checkUnknown = (path: string): FileCheck => {
  const isJson = /^\s*[{[]/u.test(readTextFile(path).text);
  const what = 'this is no driver, profile, session or reading log of pinwalk';
  const fix = isJson ? 'a driver or profile begins with its "format"' : 'give another file';
  return { kind: undefined, problems: [{ path: [], what, fix }] };
};

const checkDefinition = <T>(
  kind: FileKind,
  definition: DefinitionKind<T>,
  path: string,
): FileCheck => {
  const { problems } = readDefinition(definition, readTextFile(path).text);
  return { kind, problems: problems.slice(0, mostProblems) };
};

const checkSessionFile = (path: string): FileCheck => {
  const problems: Problem[] = [];
  const { lines, others, tornBytes, tornLine, chain } = checkSession(path, (problem) => {
    if (problems.length < mostProblems) problems.push(problem);
  });
  if (tornBytes > 0 && !problems.some(isError)) {
    problems.push({
      level: 'warning',
      path: [],
      line: tornLine ?? lines,
      what: `the last event was never finished; ${tornBytes} bytes of it are there`,
      fix: 'nothing before it is lost; `pinwalk walk --resume` goes on after it and keeps them',
    });
  }
  return {
    kind: 'session',
    problems,
    lines,
    ...(others === 0 ? {} : { unknownEvents: others }),
    ...(chain === undefined ? {} : { fingerprint: chain }),
  };
};

const checkLog = (path: string): FileCheck => {
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
  return { kind: 'reading log', problems, lines };
};

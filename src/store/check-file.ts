// Checks one file of any kind this program reads: tells by the content what it is, and gives every problem with
// its line and its fix. Refuses nothing; a file that is none of ours is a problem like another.
import { cleanText } from '../core/clean-text.js';
import { configKind } from '../core/config/config-format.js';
import { type DefinitionKind, readDefinition } from '../core/definition/read-definition.js';
import { drillKind } from '../core/drill/read-drill.js';
import { type PadFile, padsKind } from '../core/pads/pad-file.js';
import { isError, type Problem } from '../core/problems.js';
import { profileKind } from '../core/profile/profile-kind.js';
import { createLogParser, LogError } from '../core/reading-log.js';
import { shortFingerprint } from '../core/session-chain.js';
import { byteLines } from './byte-lines.js';
import { FileError } from './file-error.js';
import { checkSession } from './journal-reader.js';
import { driverKind } from './load-definitions.js';
import { problemOfLog } from './log-problem.js';
import { readTextFile } from './read-text-file.js';
import { type StoredKind, storedKind } from './stored-kind.js';

export interface FileCheck {
  /** Undefined when the file is none of ours, or cannot be read. */
  readonly kind: StoredKind | undefined;
  /** In the order of the file; at most a hundred, the first ones. */
  readonly problems: readonly Problem[];
  /** What there is to say of it when it is sound, in a few words. */
  readonly summary: string;
  /** Of a sound driver or profile. */
  readonly id?: string;
  /** Of a session whose chain holds: 64 hex digits, to be held against the noted ones. */
  readonly fingerprint?: string;
}

const mostProblems = 100;

export const checkFile = (path: string): FileCheck => {
  try {
    const kind = storedKind(path);
    switch (kind) {
      case 'driver':
        return checkDefinition(kind, driverKind, path, named);
      case 'profile':
        return checkDefinition(kind, profileKind, path, named);
      case 'configuration':
        return checkDefinition(kind, configKind, path, () => ({ summary: 'sound' }));
      case 'reply pads':
        return checkDefinition(kind, padsKind, path, padsSummary);
      case 'drill':
        return checkDefinition(kind, drillKind, path, named);
      case 'session':
        return checkSessionFile(path);
      case 'reading log':
        return checkLog(path);
      default:
        return checkUnknown(path);
    }
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    return { kind: undefined, problems: error.problems, summary: 'cannot be read' };
  }
};

const padsSummary = ({ function: measured, pads }: PadFile): Pick<FileCheck, 'summary'> => ({
  summary: cleanText(`${measured}: ${pads.map(({ command }) => command).join(', ')}`, 120),
});

const checkUnknown = (path: string): FileCheck => {
  const isJson = /^\s*[{[]/u.test(readTextFile(path).text);
  const what =
    'this is no driver, profile, drill, session, reading log, configuration or set of reply pads of pinwalk';
  const fix = isJson ? 'a driver or profile begins with its "format"' : 'give another file';
  return { kind: undefined, problems: [{ path: [], what, fix }], summary: 'unknown' };
};

const named = ({ id, title }: { readonly id: string; readonly title: string }) => ({
  id,
  summary: cleanText(`${id}, ${title}`, 120),
});

const checkDefinition = <T>(
  kind: StoredKind,
  definition: DefinitionKind<T>,
  path: string,
  summaryOf: (content: T) => Pick<FileCheck, 'summary' | 'id'>,
): FileCheck => {
  const { content, problems } = readDefinition(definition, readTextFile(path).text);
  const said = content === undefined ? { summary: 'cannot be used' } : summaryOf(content);
  return { kind, problems: problems.slice(0, mostProblems), ...said };
};

const checkSessionFile = (path: string): FileCheck => {
  const problems: Problem[] = [];
  const { lines, events, others, tornBytes, tornLine, chain } = checkSession(path, (problem) => {
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
  const unknown = others === 0 ? '' : `, ${others} of types this version does not know`;
  const proof =
    chain === undefined ? 'its chain is broken' : `fingerprint ${shortFingerprint(chain)}`;
  return {
    kind: 'session',
    problems,
    summary: `${events} events${unknown}, ${proof}`,
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
  return { kind: 'reading log', problems, summary: `${lines} lines` };
};

// Turns whatever went wrong into one clear line (or one a problem) and the exit code that other programs rely on.
import { CommanderError } from 'commander';
import { UnsoundEventError } from '../core/walk/fold-stored.js';
import { FileError } from '../store/file-error.js';
import { JournalError } from '../store/journal-error.js';
import { OutFileError } from '../store/write-out.js';
import { exitCodes, UserError } from './user-error.js';

export const exitCodeFor = (error: unknown): number => {
  if (error instanceof UserError) return error.exitCode;
  if (error instanceof CommanderError) return exitCodes.usage;
  if (error instanceof FileError) return exitCodes.badFile;
  if (error instanceof UnsoundEventError) return exitCodes.badFile;
  if (error instanceof JournalError || error instanceof OutFileError) return exitCodes.unwritten;
  return 1;
};

/** One line, or one a problem; each ready for the terminal. None where the help already said it. */
export const linesFor = (error: unknown): readonly string[] => {
  if (error instanceof CommanderError) {
    if (error.code === 'commander.help') return [];
    return [`${ownWords(error)}; see \`pinwalk --help\``];
  }
  if (error instanceof UserError || error instanceof FileError) return error.lines;
  if (isInWords(error)) return [error.message];
  const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return `unexpected failure, please report it: ${told}`.split('\n');
};

const isInWords = (error: unknown): error is Error =>
  [JournalError, OutFileError, UnsoundEventError].some((kind) => error instanceof kind);

/** Without the parser's own beginning, and its suggestion on the same line. */
const ownWords = ({ message }: CommanderError): string =>
  message.replace(/^error: /u, '').replace(/\n(?=\(Did you mean [\w, -]+\?\)$)/u, ' ');

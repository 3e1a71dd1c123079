// Turns whatever went wrong into one clear line (or one a problem) and the exit code that other programs rely on.
import { CommanderError } from 'commander';
import { FileError } from '../store/file-error.js';
import { JournalError } from '../store/journal-error.js';
import { exitCodes, UserError } from './user-error.js';

export const exitCodeFor = (error: unknown): number => {
  if (error instanceof UserError) return error.exitCode;
  if (error instanceof CommanderError) return exitCodes.usage;
  if (error instanceof FileError) return exitCodes.badFile;
  if (error instanceof JournalError) return exitCodes.unwritten;
  return 1;
};

export const linesFor = (error: unknown): string => {
  if (error instanceof CommanderError) {
    return `${error.message.replace(/^error: /u, '')}; see \`pinwalk --help\``;
  }
  if (error instanceof UserError || error instanceof FileError || error instanceof JournalError) {
    return error.message;
  }
  return `unexpected failure, please report it: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
};

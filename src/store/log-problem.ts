// A reading log's error as a problem like any other.
import { cleanText } from '../core/clean-text.js';
import type { Problem } from '../core/problems.js';
import type { LogError } from '../core/reading-log.js';

/** A log's errors say what would be right after a semicolon, where there is more to say. */
export const problemOfLog = ({ line, message }: LogError): Problem => {
  const words = cleanText(message.replace(/^line \d+: /u, ''), 300);
  const [what = '', ...fix] = words.split('; ');
  return { path: [], line, what, fix: fix.length === 0 ? 'correct the line' : fix.join('; ') };
};

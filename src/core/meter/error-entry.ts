// Reads one entry of a SCPI error queue, the answer to `SYSTem:ERRor?`: `-113,"Undefined header"`. Quotes may
// be missing, as some hand-held meters leave them out; a number outside the standard's range is refused.
import { cleanText } from '../clean-text.js';

export interface ErrorEntry {
  /** -32768 to 32767; 0 means the queue is empty, positive numbers are the maker's own. */
  readonly code: number;
  /** Cleaned. */
  readonly text: string;
}

const entry = /^([+-]?\d{1,5})(?:\s*,\s*(.*))?$/u;
const longestText = 255;

/** The entry, or null where the answer is not one. */
export const parseErrorEntry = (answer: string): ErrorEntry | null => {
  const match = entry.exec(answer.trim());
  if (!match) return null;
  const code = Number(match[1]);
  if (code < -32768 || code > 32767) return null;
  const raw = match[2] ?? '';
  const quoted = raw.length > 1 && raw.startsWith('"') && raw.endsWith('"');
  const text = quoted ? raw.slice(1, -1).replaceAll('""', '"') : raw;
  return { code: code === 0 ? 0 : code, text: cleanText(text, longestText) };
};

export type ErrorClass = 'none' | 'command' | 'execution' | 'device' | 'query';

/** The class of an error by its hundred (SCPI-1999 volume 2, chapter 21). The maker's own are device errors. */
export const errorClass = ({ code }: ErrorEntry): ErrorClass => {
  if (code === 0) return 'none';
  if (code <= -100 && code >= -199) return 'command';
  if (code <= -200 && code >= -299) return 'execution';
  if (code <= -400 && code >= -499) return 'query';
  return 'device';
};

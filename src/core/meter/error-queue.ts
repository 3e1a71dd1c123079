// The error queue of an imitated SCPI meter, and the standard's entries it uses (SCPI-1999 volume 2, chapter 21,
// from memory; -113 and -350 read in the Keysight 81160A guide p. 504).
import type { ErrorEntry } from './error-entry.js';

export const scpiErrors = {
  undefinedHeader: { code: -113, text: 'Undefined header' },
  missingParameter: { code: -109, text: 'Missing parameter' },
  dataType: { code: -104, text: 'Data type error' },
  outOfRange: { code: -222, text: 'Data out of range' },
  illegalParameter: { code: -224, text: 'Illegal parameter value' },
  stale: { code: -230, text: 'Data corrupt or stale' },
  overflow: { code: -350, text: 'Queue overflow' },
} as const satisfies Record<string, ErrorEntry>;

const queueLength = 16;

/** First in, first out. A full queue keeps its oldest entries and says in the last one that others were lost. */
export const queueError = (
  queue: readonly ErrorEntry[],
  error: ErrorEntry,
): readonly ErrorEntry[] =>
  queue.length < queueLength ? [...queue, error] : [...queue.slice(0, -1), scpiErrors.overflow];

export const entryText = ({ code, text }: ErrorEntry): string => `${code},"${text}"`;

/** The answer of an empty queue. */
export const noError = '+0,"No error"';

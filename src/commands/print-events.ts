// Prints what happens in a walk as it happens: for another program, or for a person who reads lines.
import type { Numbered } from '../core/events.js';
import { jsonLine } from '../core/json-line.js';
import type { WalkState } from '../core/walk/state.js';
import { describe } from '../core/words/describe.js';
import type { Words } from '../core/words/words.js';
import type { Follower } from '../session/ports.js';
import { shownLine } from './say.js';

export type Write = (text: string) => void;

/** One JSON object a line. Readings are left out unless asked for: there may be fifty a second. */
export const printJson =
  (write: Write, readings: boolean): Follower =>
  (event) => {
    if (readings || event.type !== 'reading-taken') write(`${jsonLine(event)}\n`);
  };

/** Lines of text, without cursor control. */
export const printPlain =
  (write: Write, words: Words, state: () => WalkState): Follower =>
  (event: Numbered) => {
    const line = describe(event, state(), words);
    if (line === null) return;
    // Triage is several lines, each of them clean; a line end in anything else is somebody else's.
    const lines = event.type === 'groups-proposed' ? line.split('\n') : [line];
    for (const shown of lines) write(shownLine(shown));
  };

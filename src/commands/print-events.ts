// Prints what happens in a walk as it happens: for another program, or for a person who reads lines.
import type { WalkState } from '../core/walk/state.js';
import { describe } from '../core/words/describe.js';
import type { Words } from '../core/words/words.js';
import type { Follower } from '../session/ports.js';
import { sayLine, sayObject } from './say.js';

/** One JSON object a line. Readings are left out unless asked for: there may be fifty a second. */
export const printJson =
  (readings: boolean): Follower =>
  (event) => {
    if (readings || event.type !== 'reading-taken') sayObject(event);
  };

/** Lines of text, without cursor control. */
export const printPlain =
  (words: Words, state: () => WalkState): Follower =>
  (event) => {
    const line = describe(event, state(), words);
    if (line === null) return;
    // Triage is several lines, each of them clean; a line end in anything else is somebody else's.
    const lines = event.type === 'groups-proposed' ? line.split('\n') : [line];
    lines.forEach(sayLine);
  };

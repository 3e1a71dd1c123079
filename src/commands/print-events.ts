// Prints what happens in a walk as it happens: for another program, or for a person who reads lines.
import type { WalkState } from '../core/walk/state.js';
import { describe } from '../core/words/describe.js';
import { english } from '../core/words/english.js';
import type { Follower } from '../session/ports.js';
import type { Face } from './face.js';
import { sayLine, sayObject } from './say.js';

export interface Printing {
  /** As objects, every reading too: there may be fifty a second. */
  readonly readings: boolean;
  /** The state after the event. */
  readonly state: () => WalkState;
}

export const printer = (face: Face, { readings, state }: Printing): Follower =>
  face === 'json' ? printJson(readings) : printPlain(state);

/** One JSON object a line. */
const printJson =
  (readings: boolean): Follower =>
  (event) => {
    if (readings || event.type !== 'reading-taken') sayObject(event);
  };

/** Lines of text, without cursor control. */
export const printPlain =
  (state: () => WalkState): Follower =>
  (event) => {
    const line = describe(event, state(), english);
    if (line === null) return;
    // Triage is several lines, each of them clean; a line end in anything else is somebody else's.
    const lines = event.type === 'groups-proposed' ? line.split('\n') : [line];
    lines.forEach(sayLine);
  };

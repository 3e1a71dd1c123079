// Prints what happens in a walk as it happens: for another program, or for a person who reads lines.
import { isJobEvent } from '../core/event-families.js';
import type { WalkState } from '../core/walk/state.js';
import { describe } from '../core/words/describe.js';
import { describeJob } from '../core/words/describe-job.js';
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
    if (isJobEvent(event)) {
      describeJob(event, state().profile, english.job).forEach(sayLine);
      return;
    }
    const line = describe(event, state(), english);
    if (line !== null) sayLine(line);
  };

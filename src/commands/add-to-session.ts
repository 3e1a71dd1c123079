// Adds a few events to a saved session at once and says what was added.
import { cleanText } from '../core/clean-text.js';
import type { WalkEvent } from '../core/events.js';
import { openStored } from '../core/walk/fold-stored.js';
import { english } from '../core/words/english.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { type LaterWork, openLaterWork } from '../store/later-work.js';
import { chooseFace, type FaceOptions } from './face.js';
import { printer } from './print-events.js';
import { complain } from './say.js';
import { wallClock } from './wall-clock.js';

/** @param eventsFor may throw: then nothing is added. */
export const addToSession = async (
  session: string,
  options: FaceOptions,
  eventsFor: (work: LaterWork) => readonly WalkEvent[],
): Promise<void> => {
  const face = chooseFace(options, { output: false, input: false });
  const { now } = createMonotonicClock();
  const work = openLaterWork(session, { now, wall: wallClock() });
  try {
    for (const notice of work.notices) complain(notice);
    const state = openStored(work.opened);
    work.append(eventsFor(work)).forEach(printer(face, { readings: true, state: () => state }));
  } finally {
    await work.close();
  }
  complain(english.savedIn(cleanText(session, 300)));
};

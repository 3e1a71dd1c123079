// Begins the press test of a session that is nothing else, once the meter's pace is known.
import { beginPressTest } from './press.js';
import type { Teller } from './teller.js';

/** So many readings, over so many seconds, tell the meter's pace. */
const paceReadings = 5;
const paceS = 1.5;

export const beginAlone = (teller: Teller, t: number): void => {
  const { alone, stage } = teller.state;
  if (alone === null || stage !== 'walking') return;
  const { gaps } = alone.updates;
  const watchedS = gaps.reduce((sum, gap) => sum + gap, 0);
  if (gaps.length < paceReadings || watchedS < paceS) return;
  beginPressTest(teller, t, alone.pin);
};

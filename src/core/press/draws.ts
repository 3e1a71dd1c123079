// The jitter of a paced test, from the session's seed: no hand and no hum can follow it, and the same session
// decided anew gives the same cues. Not for secrets.
import { drawsNeeded } from './schedule.js';

/**
 * Fractions from 0 up to, not including, 1, one test after another.
 *
 * A counter through a 32-bit mixing function (the finaliser of MurmurHash3, public domain, from memory).
 */
export const drawsFor = (seed: number, nth: number): readonly number[] =>
  Array.from({ length: drawsNeeded }, (_, i) => mixed(seed + nth * drawsNeeded + i) / 2 ** 32);

const mixed = (counter: number): number => {
  let h = Math.imul(counter + 1, 0x9e3779b1);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
};

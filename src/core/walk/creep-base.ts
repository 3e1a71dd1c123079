// Where the readings of a touch begin that tell what is still to come.
import { type Creep, type Mark, place } from './creep.js';

/** Only the late part of a touch tells: from this share of its time on, once it is `enough` readings. */
const lateShare = 0.4;
const enough = 4;

/** The latest mark that leaves the late share of the touch, and enough readings, behind it. */
export const baseOf = ({ marks, startT, lastT, n }: Creep): number => {
  const late = startT + lateShare * (lastT - startT);
  let at = 0;
  for (let next = 1; next < marks.length; next += 1) {
    const mark = marks[next] as Mark;
    if (mark.t > late || n - (mark.sums[place.n] as number) < enough) break;
    at = next;
  }
  return at;
};

export const baseMark = (creep: Creep): Mark => creep.marks[baseOf(creep)] as Mark;

// The exact tolerance factor by number of boards. One takes a tenth of a second or more, and every line asks for it.
import { exactToleranceFactor } from '../numbers/exact-tolerance-factor.js';
import { confidence, share } from './learn-line.js';

/** @returns the two-sided factor for 95 % at 95 %, worked out once for each number of boards. */
export const createToleranceFactors = (): ((boards: number) => number) => {
  const known = new Map<number, number>();
  return (boards) => {
    const factor = known.get(boards) ?? exactToleranceFactor(boards, share, confidence);
    known.set(boards, factor);
    return factor;
  };
};

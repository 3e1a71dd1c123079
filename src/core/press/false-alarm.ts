// What the press test's findings are worth: its p-values adjusted for repeated looks and both directions, and
// the rate at which it names a joint although nothing answers. Computed from the design, never assumed.
import { oneSidedP } from './look-table.js';
import { answersNeeded, decisiveP, fewestCycles, mostCycles } from './press-design.js';
import { type NullTally, worstNullChance } from './worst-null.js';

/** Ties are ties whatever the last bit says. */
const slack = 1e-12;

/**
 * The smallest-p adjustment (Westfall and Young 1993, from memory) over all looks from 4 to 8 cycles and both
 * directions: the chance, in the worst case over the share of contact windows, that a test in which pressing
 * does nothing shows at any look a raw one-sided p-value as small. It never falls below the raw one.
 * @throws RangeError for a p-value outside 0 to 1.
 * @example adjustedPValue(1 / 70); // 0.0275
 */
export const adjustedPValue = (pValue: number): number => {
  if (!(pValue >= 0 && pValue <= 1)) throw new RangeError(`a p-value lies in 0 to 1`);
  const chance = worstNullChance((tally) => smallestP(tally) <= pValue + slack, 1, 0);
  return Math.max(pValue, chance);
};

const smallestP = ({ cycles, pressed, released }: NullTally): number =>
  cycles < fewestCycles
    ? Number.POSITIVE_INFINITY
    : Math.min(oneSidedP(cycles, pressed, released), oneSidedP(cycles, released, pressed));

/**
 * The overall false-alarm rate: the chance that one part whose pressing does nothing is found loose, cracked
 * or bridged at any of the looks. Futility stops are left out of it, so it holds even if they are overruled.
 * With `lockChance` 1 it is the rate of the windows alone, for any exchangeable null.
 * @param lockChance see `lock-chance`: edges of the trace fall anywhere in their gaps, each by itself.
 * @throws RangeError unless lockChance lies in [0, 1].
 */
export const falseAlarmRate = (lockChance: number): number =>
  worstNullChance(isFinding, lockChance, answersNeeded(mostCycles));

const isFinding = ({ cycles, pressed, released, answers, reversed }: NullTally): boolean => {
  if (cycles < fewestCycles) return false;
  const needed = answersNeeded(cycles);
  const closes = answers >= needed && oneSidedP(cycles, pressed, released) <= decisiveP;
  return closes || (reversed >= needed && oneSidedP(cycles, released, pressed) <= decisiveP);
};

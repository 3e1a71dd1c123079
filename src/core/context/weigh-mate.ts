// What a mate that is surely normal adds to the belief that a line is: Bayes' theorem with likelihoods by
// experience. A mate that is not surely normal adds nothing, because alike is not healthy.
import { requireProbability } from '../numbers/require-probability.js';
import type { MateComparison } from './compare-mates.js';

/** How often two lines read alike when both are sound, and when only the mate is. Common practice, no source. */
const alikeWhenSound = 0.97;
const alikeWhenNot = 0.1;

/**
 * The probability that the line is normal, given how it compares with its mate. It says that the line is sound,
 * not on which side of a limit its value lies: never turn an `unsure` near a limit into `normal` by it.
 *
 * @param normal the probability from the line's own reading, 0 to 1
 * @param mateNormal the same of the mate
 * @throws RangeError unless 0 < normal < 1 and 0 < mateNormal < 1.
 * @example weighMate(0.96, 0.99, { finding: 'alike', both: 'value', difference: 0 }); // 0.996
 */
export const weighMate = (
  normal: number,
  mateNormal: number,
  comparison: MateComparison,
): number => {
  requireProbability(normal, 'a probability of normal');
  requireProbability(mateNormal, "a mate's probability of normal");
  if (comparison.finding === 'not-comparable') return normal;
  const alike = comparison.finding === 'alike';
  const chance = (when: number): number => (alike ? when : 1 - when);
  // Where the mate itself is not normal, either outcome is as likely as the other.
  const ifNormal = mateNormal * chance(alikeWhenSound) + (1 - mateNormal) / 2;
  const ifNot = mateNormal * chance(alikeWhenNot) + (1 - mateNormal) / 2;
  return (normal * ifNormal) / (normal * ifNormal + (1 - normal) * ifNot);
};

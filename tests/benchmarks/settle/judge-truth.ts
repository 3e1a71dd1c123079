// The right verdict for a true value, straight from the profile's limits. Written apart from the program's
// own judging, so that one checks the other.

import type { ProfileLine } from '../../../src/core/profile/profile-format.js';
import type { MeasureFunction } from '../../../src/core/reading.js';
import type { Verdict } from '../../../src/core/verdict.js';

export const shortLimitOf = (line: ProfileLine): number => line.limits?.short ?? 5;

/** Every value at which the verdict changes, on a line that has an expected value. */
export const limitsOf = (line: ProfileLine, measure: MeasureFunction): readonly number[] => {
  const expected = line.expect?.[measure];
  if (line.kind === 'ground' || expected === undefined || expected === 'overload')
    return [shortLimitOf(line)];
  const { nominal, tolerance } = expected;
  return [shortLimitOf(line), nominal * (1 - tolerance), nominal * (1 + tolerance)];
};

/** @throws RangeError where the profile does not say what is right. */
export const rightVerdicts = (
  line: ProfileLine,
  measure: MeasureFunction,
  value: number | null,
): readonly Verdict[] => {
  const expected = line.expect?.[measure];
  if (value === null) return [expected === 'overload' ? 'normal' : 'open'];
  if (line.kind === 'ground') {
    if (value < shortLimitOf(line)) return ['normal'];
    throw new RangeError('a ground that reads a value has no agreed verdict');
  }
  if (value < shortLimitOf(line)) return ['short'];
  // The design says only that a value there is abnormal, not which word it gets.
  if (expected === 'overload') return ['low', 'high'];
  if (expected === undefined) throw new RangeError('no expected value, no right verdict');
  if (value < expected.nominal * (1 - expected.tolerance)) return ['low'];
  return [value > expected.nominal * (1 + expected.tolerance) ? 'high' : 'normal'];
};

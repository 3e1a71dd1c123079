// The tolerance a line has before anything is learned of it: its own, else what lines of its kind have in this
// profile, else common practice.
import { median } from '../numbers/median.js';
import type { Profile, ProfileLine } from '../profile/profile-format.js';
import type { MeasureFunction } from '../reading.js';

/** As fractions. Common practice, no source. */
const common: Readonly<Record<ProfileLine['kind'], number>> = {
  signal: 0.1,
  supply: 0.2,
  ground: 0.1,
  unused: 0.1,
};

export const usualTolerance = (
  profile: Profile,
  line: string,
  measure: MeasureFunction,
): number => {
  const found = profile.lines[line];
  if (found === undefined) return common.signal;
  const toleranceOf = ({ expect }: ProfileLine): number[] => {
    const expected = expect?.[measure];
    return expected === undefined || expected === 'overload' ? [] : [expected.tolerance];
  };
  const own = toleranceOf(found)[0];
  if (own !== undefined) return own;
  const kin = Object.values(profile.lines).filter(({ kind }) => kind === found.kind);
  const theirs = kin.flatMap(toleranceOf);
  return theirs.length === 0 ? common[found.kind] : median(theirs);
};

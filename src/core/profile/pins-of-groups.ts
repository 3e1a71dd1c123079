// The pins a walk is kept to when only some groups are in question: theirs, and one ground at each end of every run
// of them. Grounds anchor the walk, but two in a row read alike, and a step too many between them would not show.
import { nearestName } from '../nearest-name.js';
import { quoted } from '../problems.js';
import type { Profile } from './profile-format.js';

/** In walking order. @throws RangeError in words for a group that no line belongs to. */
export const pinsOfGroups = (profile: Profile, groups: readonly string[]): readonly string[] => {
  requireGroups(profile, groups);
  const pins = profile.connector.pins.map(({ pin, line }) => {
    const { kind, group } = profile.lines[line] ?? {};
    return {
      pin,
      isAsked: group !== undefined && groups.includes(group),
      isGround: kind === 'ground',
    };
  });
  const kept: typeof pins = [];
  pins.forEach((one, at) => {
    const isEnd = pins[at - 1]?.isAsked === true || pins[at + 1]?.isAsked === true;
    const followsGround = kept.at(-1)?.isGround === true;
    if (one.isAsked || (one.isGround && isEnd && !followsGround)) kept.push(one);
  });
  return kept.map(({ pin }) => pin);
};

const requireGroups = ({ lines }: Profile, groups: readonly string[]): void => {
  const known = new Set(Object.values(lines).flatMap(({ group }) => group ?? []));
  for (const group of groups) {
    if (known.has(group)) continue;
    const near = nearestName(group, known);
    const fix =
      near === undefined ? `there are ${[...known].join(', ')}` : `did you mean ${quoted(near)}?`;
    throw new RangeError(`there is no group ${quoted(group)}: ${fix}`);
  }
};

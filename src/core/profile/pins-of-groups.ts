// The pins a walk is kept to when only some groups are in question: theirs, and every ground, which anchors the walk.
import { nearestName } from '../nearest-name.js';
import { quoted } from '../problems.js';
import type { Profile } from './profile-format.js';

/** In walking order. @throws RangeError in words for a group that no line belongs to. */
export const pinsOfGroups = (
  { connector, lines }: Profile,
  groups: readonly string[],
): readonly string[] => {
  const known = new Set(Object.values(lines).flatMap(({ group }) => group ?? []));
  for (const group of groups) {
    if (known.has(group)) continue;
    const near = nearestName(group, known);
    const fix =
      near === undefined ? `there are ${[...known].join(', ')}` : `did you mean ${quoted(near)}?`;
    throw new RangeError(`there is no group ${quoted(group)}: ${fix}`);
  }
  return connector.pins
    .filter(({ line }) => {
      const { kind, group } = lines[line] ?? {};
      return kind === 'ground' || (group !== undefined && groups.includes(group));
    })
    .map(({ pin }) => pin);
};

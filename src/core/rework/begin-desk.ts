// What the rework desk begins with: the part that is suspected most, and the tool as it was set last.
import type { Numbered } from '../events.js';
import type { Profile } from '../profile/profile-format.js';
import type { Setting } from './decide-rework.js';
import type { Place } from './heat-limits.js';
import type { ReworkState } from './rework-state.js';

export const firstPlace = (
  before: readonly Numbered[],
  { logged }: ReworkState,
  profile: Profile,
): Place => {
  const last = logged.at(-1);
  if (last !== undefined) return { part: last.part, area: last.area };
  return { part: partsByDoubt(before, profile)[0] };
};

/** All parts of the profile, those that were suspected last before the rest. */
export const partsByDoubt = (before: readonly Numbered[], profile: Profile): readonly string[] => {
  const parts = Object.keys(profile.parts ?? {});
  const ranked = before.findLast((event) => event.type === 'suspects-ranked');
  const suspected = (ranked?.suspects ?? []).flatMap(({ where, id }) =>
    // A joint is named for its part: "FL2 pad 1".
    where === 'lead' ? [] : parts.filter((part) => id === part || id.startsWith(`${part} `)),
  );
  return [...new Set([...suspected, ...parts])];
};

export const firstSetting = ({ logged }: ReworkState): Setting => {
  const last = logged.findLast(({ tool }) => tool !== undefined);
  return last === undefined
    ? {}
    : { tool: last.tool, setPoint: last.setPoint, airflow: last.airflow };
};

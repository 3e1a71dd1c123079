// How much likelier, or less likely, each place is at fault than its sort: near heat, on lines that the symptom
// questions, on lines that still work. Refuses a symptom the profile does not have.
import type { Profile } from '../profile/profile-format.js';
import { besideHeatFactor, heatedFactor, questionedFactor, workingFactor } from './priors.js';
import type { Route } from './suspect-model.js';
import type { SuspectDraft } from './suspect-register.js';

export interface PriorHints {
  /** Parts and joints that were heated, reworked or hit. */
  readonly heated?: readonly string[];
  /** Id of the profile's symptom the board came in with. */
  readonly symptom?: string;
}

/** Stops along the line that heat reaches beside its target: a part's joint, and what that leads to. */
const heatReach = 2;

/** One factor a suspect. @throws RangeError for an unknown symptom. */
export const priorFactors = (
  profile: Profile,
  routes: readonly Route[],
  suspects: readonly SuspectDraft[],
  { heated = [], symptom }: PriorHints,
): number[] => {
  const hot = new Set(heated);
  const isHot = ({ id, pressedAt }: SuspectDraft): boolean =>
    hot.has(id) || [...pressedAt].some((part) => part !== profile.connector.id && hot.has(part));
  const beside = besideHot(routes, suspects, isHot);
  const questioned = lineFactors(profile, symptom);
  return suspects.map((suspect, index) => {
    const near = isHot(suspect) ? heatedFactor : beside.has(index) ? besideHeatFactor : 1;
    return near * Math.max(...[...suspect.lines].map((line) => questioned.get(line) ?? 1));
  });
};

const besideHot = (
  routes: readonly Route[],
  suspects: readonly SuspectDraft[],
  isHot: (suspect: SuspectDraft) => boolean,
): ReadonlySet<number> => {
  const beside = new Set<number>();
  for (const { seats } of routes) {
    const hotStops = seats.flatMap(({ suspect, at }) => {
      const draft = suspects[suspect];
      return draft !== undefined && isHot(draft) ? [at] : [];
    });
    for (const { suspect, at } of seats)
      if (hotStops.some((stop) => Math.abs(stop - at) <= heatReach)) beside.add(suspect);
  }
  return beside;
};

const lineFactors = (profile: Profile, id: string | undefined): ReadonlyMap<string, number> => {
  if (id === undefined) return new Map();
  const symptom = profile.symptoms?.find((known) => known.id === id);
  if (symptom === undefined) throw new RangeError(`profile ${profile.id} has no symptom ${id}`);
  return new Map(
    Object.entries(profile.lines).map(([name, { group }]) => {
      if (group === undefined) return [name, 1];
      if (symptom.walkFirst.includes(group)) return [name, questionedFactor];
      return [name, symptom.leaveAlone?.includes(group) === true ? workingFactor : 1];
    }),
  );
};

// How often each place of a connector is at fault, from a shop's own boards: what the profile said so far, moved
// towards what was counted, the further the more boards there are.
import type { Profile } from '../profile/profile-format.js';
import { buildModel } from '../suspects/build-model.js';
import { priorOf, type Suspect, type SuspectModel } from '../suspects/suspect-model.js';
import type { History } from './tally-cases.js';

/**
 * The prior of a place counts as much as this many boards (our own choice): the mean of a beta distribution with
 * that weight, after k faults in n boards, is (k + weight · prior) / (n + weight).
 */
const priorWeight = 30;
/** A profile takes no larger prior. */
const mostPrior = 0.5;

export interface LearnedPrior {
  readonly place: string;
  /** Boards on which it was at fault, of `boards`. */
  readonly faults: number;
  readonly boards: number;
  readonly before: number;
  readonly now: number;
}

export interface ShopPriors {
  readonly profile: Profile;
  readonly priors: readonly LearnedPrior[];
  /** Places that were at fault and that the profile has no room for a prior of. */
  readonly unplaced: readonly string[];
}

/** Suspicions do not count: only what was confirmed or found by pressing. Null where no board says anything. */
export const shopPriors = (profile: Profile, history: History): ShopPriors | null => {
  const boards = history.boards.find((known) => known.profile === profile.id)?.boards ?? 0;
  const faults = faultsOf(profile.id, history);
  if (boards === 0 || faults.size === 0) return null;
  const model = buildModel(profile);
  const named = namedPlaces(profile);
  const priors = wholePlaces(model).flatMap(({ index, id }): LearnedPrior[] => {
    if (!named.has(id)) return [];
    const before = priorOf(model, index);
    const count = faults.get(id) ?? 0;
    const mean = (count + priorWeight * before) / (boards + priorWeight);
    const now = Number(Math.min(mostPrior, mean).toPrecision(3));
    return [{ place: id, faults: count, boards, before, now }];
  });
  const placed = new Set(priors.map(({ place }) => place));
  return {
    profile: withPriors(profile, new Map(priors.map(({ place, now }) => [place, now]))),
    priors: priors.filter(({ faults: count }) => count > 0).sort((a, b) => b.now - a.now),
    unplaced: [...faults.keys()].filter((place) => !placed.has(place)).sort(),
  };
};

const faultsOf = (profile: string, { rows }: History): ReadonlyMap<string, number> => {
  const faults = new Map<string, number>();
  for (const { profile: own, place, counts } of rows) {
    const count = counts.confirmed + counts.found;
    if (own === profile && count > 0) faults.set(place, (faults.get(place) ?? 0) + count);
  }
  return faults;
};

/** A part on several lines is a suspect as a whole, which the profile's prior is for, and one on each of them. */
const wholePlaces = ({ suspects }: SuspectModel): readonly Suspect[] => {
  const whole = new Map<string, Suspect>();
  for (const suspect of suspects) {
    const known = whole.get(suspect.id);
    if (known === undefined || suspect.lines.length > known.lines.length) {
      whole.set(suspect.id, suspect);
    }
  }
  return [...whole.values()];
};

/** Parts, and joints of a chain: what can carry a prior of its own. */
const namedPlaces = ({ parts = {}, lines }: Profile): ReadonlySet<string> =>
  new Set([
    ...Object.keys(parts),
    ...Object.values(lines).flatMap(({ chain = [] }) =>
      chain.flatMap((stop) => ('joint' in stop ? [stop.joint] : [])),
    ),
  ]);

const withPriors = (profile: Profile, priors: ReadonlyMap<string, number>): Profile => {
  const add = <T extends object>(place: string, to: T): T => {
    const prior = priors.get(place);
    return prior === undefined ? to : { ...to, prior };
  };
  const lines = Object.entries(profile.lines).map(([name, line]) => [
    name,
    line.chain === undefined
      ? line
      : {
          ...line,
          chain: line.chain.map((stop) => ('joint' in stop ? add(stop.joint, stop) : stop)),
        },
  ]);
  const parts = Object.entries(profile.parts ?? {}).map(([name, part]) => [name, add(name, part)]);
  return {
    ...profile,
    lines: Object.fromEntries(lines),
    ...(profile.parts === undefined ? {} : { parts: Object.fromEntries(parts) }),
  };
};

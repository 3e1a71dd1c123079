// The weigher of a board, made once for each profile and way of measuring: a walk asks it again with every verdict,
// and what is known of the observations before is kept. Pure for all that: the same evidence gives the same.
import type { Profile } from '../profile/profile-format.js';
import type { MeasureFunction, Polarity } from '../reading.js';
import { buildModel } from './build-model.js';
import type { Evidence } from './evidence.js';
import type { Posterior } from './posterior.js';
import { isOnBoard } from './views.js';
import { faultWeigher } from './weigh-faults.js';

type Weigher = (evidence: Evidence) => Posterior;

interface Measured {
  readonly function: MeasureFunction;
  readonly polarity: Polarity;
}

const weighers = new WeakMap<Profile, Map<string, Weigher>>();

/** Observations that the profile has no place for tell nothing. */
const makeWeigher = (profile: Profile, { function: measure, polarity }: Measured): Weigher => {
  const model = buildModel(profile, { measure: { function: measure, polarity } });
  const weigh = faultWeigher(model);
  return lastKept((evidence) => weigh(evidence.filter((seen) => isOnBoard(model, seen))));
};

/** The same evidence is often asked about again, as a screen does that shows it. */
const lastKept = (weigh: Weigher): Weigher => {
  let last: { readonly evidence: Evidence; readonly posterior: Posterior } | null = null;
  return (evidence) => {
    if (last?.evidence !== evidence) last = { evidence, posterior: weigh(evidence) };
    return last.posterior;
  };
};

export const boardWeigher = (profile: Profile, measured: Measured): Weigher => {
  const known = weighers.get(profile) ?? new Map<string, Weigher>();
  weighers.set(profile, known);
  const key = `${measured.function} ${measured.polarity}`;
  const weigher = known.get(key) ?? makeWeigher(profile, measured);
  known.set(key, weigher);
  return weigher;
};

// Weighs the cases of one route by what was observed on it, with or without the observations that a failed lead
// explains instead.
import type { Evidence, Observation } from './evidence.js';
import { likelihoodOf } from './outlook.js';
import { type RouteCases, routeCases } from './route-cases.js';
import type { Route, SuspectModel } from './suspect-model.js';
import { lookedAt } from './views.js';

export interface Weighed {
  /** Which observations are left to the lead, as a key. */
  readonly key: string;
  readonly isCovered: boolean;
  /** Prior times likelihood, own cases by shared ones. */
  readonly weights: Float64Array;
  /** Sum over own cases for each shared one; and over those without an unnamed fault. */
  readonly sums: Float64Array;
  readonly namedSums: Float64Array;
  /** Sum over the cases in which nothing at all is at fault. */
  readonly sound: number;
}

export interface RouteWeights {
  readonly cases: RouteCases;
  /** Something was observed on this route. */
  readonly isSeen: boolean;
  readonly weigh: (covered: { readonly from: number; readonly to: number }) => Weighed;
}

/** Weighs a route by any evidence; what was worked out for an observation is kept for the next time. */
export const routeWeigher = (
  model: SuspectModel,
  route: Route,
): ((evidence: Evidence) => RouteWeights) => {
  const knownCases = new Map<boolean, RouteCases>();
  const knownLikelihoods = new Map<string, Float64Array>();
  return (evidence) => {
    const onRoute = evidence.flatMap((observation, index) =>
      lookedAt(model, observation).route === route ? [{ index, observation }] : [],
    );
    const isPressed = onRoute.some(({ observation }) => observation.kind === 'press');
    const cases = knownCases.get(isPressed) ?? routeCases(model, route, isPressed);
    knownCases.set(isPressed, cases);
    const seen = onRoute.map(({ index, observation }) => {
      const key = `${isPressed} ${JSON.stringify(observation)}`;
      const likelihoods = knownLikelihoods.get(key) ?? likelihoodsOf(model, cases, observation);
      knownLikelihoods.set(key, likelihoods);
      return { index, likelihoods };
    });
    const known = new Map<string, Weighed>();
    const weigh: RouteWeights['weigh'] = ({ from, to }) => {
      const left = seen.filter(({ index }) => index < from || index >= to);
      const key = left.map(({ index }) => index).join();
      const weighed =
        known.get(key) ??
        weighCases(model, cases, {
          key,
          isCovered: left.length < seen.length,
          likelihoods: left.map(({ likelihoods }) => likelihoods),
        });
      known.set(key, weighed);
      return weighed;
    };
    return { cases, isSeen: seen.length > 0, weigh };
  };
};

const likelihoodsOf = (
  model: SuspectModel,
  { own, shared }: RouteCases,
  observation: Observation,
): Float64Array => {
  const likelihood = likelihoodOf(model, observation);
  const values = new Float64Array(own.length * shared.length);
  let at = 0;
  for (const mine of own)
    for (const theirs of shared) {
      const isOwn = theirs.faults.length === 0;
      const faults = isOwn ? mine.faults : [...mine.faults, ...theirs.faults];
      values[at] = likelihood(faults, mine.flexes);
      at += 1;
    }
  return values;
};

const weighCases = (
  model: SuspectModel,
  { own, shared }: RouteCases,
  seen: { key: string; isCovered: boolean; likelihoods: readonly Float64Array[] },
): Weighed => {
  const { key, isCovered, likelihoods } = seen;
  const weights = new Float64Array(own.length * shared.length);
  const sums = new Float64Array(shared.length);
  const namedSums = new Float64Array(shared.length);
  let sound = 0;
  own.forEach(({ prior, suspects }, row) => {
    const isNamed = suspects.every((suspect) => model.suspects[suspect]?.where !== 'other');
    for (let place = 0; place < shared.length; place += 1) {
      const at = row * shared.length + place;
      let weight = prior;
      for (const likelihood of likelihoods) weight *= likelihood[at] as number;
      weights[at] = weight;
      if (place === 0 && suspects.length === 0) sound += weight;
      sums[place] = (sums[place] as number) + weight;
      if (isNamed) namedSums[place] = (namedSums[place] as number) + weight;
    }
  });
  return { key, isCovered, weights, sums, namedSums, sound };
};

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
}

export interface RouteWeights {
  readonly cases: RouteCases;
  /** Something was observed on this route. */
  readonly isSeen: boolean;
  readonly weigh: (covered: { readonly from: number; readonly to: number }) => Weighed;
}

export const weighRoute = (model: SuspectModel, route: Route, evidence: Evidence): RouteWeights => {
  const cases = routeCases(model, route);
  const seen = evidence.flatMap((observation, index) =>
    lookedAt(model, observation).route === route
      ? [{ index, likelihoods: likelihoodsOf(model, cases, observation) }]
      : [],
  );
  const known = new Map<string, Weighed>();
  return {
    cases,
    isSeen: seen.length > 0,
    weigh: ({ from, to }) => {
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
    },
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
      values[at] = likelihood(
        theirs.faults.length === 0 ? mine.faults : [...mine.faults, ...theirs.faults],
      );
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
  own.forEach(({ prior, suspects }, row) => {
    const isNamed = suspects.every((suspect) => model.suspects[suspect]?.where !== 'other');
    for (let place = 0; place < shared.length; place += 1) {
      const at = row * shared.length + place;
      let weight = prior;
      for (const likelihood of likelihoods) weight *= likelihood[at] as number;
      weights[at] = weight;
      sums[place] = (sums[place] as number) + weight;
      if (isNamed) namedSums[place] = (namedSums[place] as number) + weight;
    }
  });
  return { key, isCovered, weights, sums, namedSums };
};

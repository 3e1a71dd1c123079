// Weighs the cases of one route by what was observed on it, with or without the observations that a failed lead
// explains instead.
import type { Observation } from './evidence.js';
import { likelihoodOf } from './outlook.js';
import { remembering } from './remembering.js';
import { type RouteCases, routeCases } from './route-cases.js';
import type { Route, SuspectModel } from './suspect-model.js';

export interface Weighed {
  /** The same for the same route, observations and cases, and for nothing else. */
  readonly key: string;
  /** Prior times likelihood, one a case. */
  readonly weights: Float64Array;
  /** Sum over the cases of each joint state of the shared suspects; and over those without an unnamed fault. */
  readonly sums: Float64Array;
  readonly namedSums: Float64Array;
  /** Weight of the cases in which nothing at all is at fault. */
  readonly sound: number;
}

export interface RouteWeights {
  readonly cases: RouteCases;
  /** Something was observed on this route. */
  readonly isSeen: boolean;
  /** By what was observed outside of a stretch of the evidence, from the first index to before the second. */
  readonly weigh: (from: number, to: number) => { weighed: Weighed; isCovered: boolean };
}

export interface RouteWeigher {
  readonly route: Route;
  /** What was worked out for an observation is kept for the next time. */
  readonly weigh: (onRoute: readonly Seen[]) => RouteWeights;
}

/** An observation with its place in the evidence. */
export interface Seen {
  readonly index: number;
  readonly observation: Observation;
}

/** So many observations and sets of them are remembered for each route. */
const mostRemembered = 200;

export const routeWeigher = (model: SuspectModel, route: Route): RouteWeigher => {
  const casesFor = remembering<RouteCases>(2);
  const likelihoodsFor = remembering<Float64Array>(mostRemembered);
  const weightsFor = remembering<Weighed>(mostRemembered);
  return {
    route,
    weigh: (onRoute) => {
      const isPressed = onRoute.some(({ observation }) => observation.kind === 'press');
      const cases = casesFor(String(isPressed), () => routeCases(model, route, isPressed));
      const seen = onRoute.map(({ index, observation }) => {
        const key = `${isPressed} ${JSON.stringify(observation)}`;
        const work = () => likelihoodsOf(model, cases, observation);
        return { index, key, likelihoods: likelihoodsFor(key, work) };
      });
      const weighSeen = (kept: typeof seen): Weighed => {
        const key = `${route.index} ${isPressed} ${kept.map((one) => one.key).join()}`;
        return weightsFor(key, () =>
          weighCases(
            model,
            cases,
            key,
            kept.map(({ likelihoods }) => likelihoods),
          ),
        );
      };
      const all = weighSeen(seen);
      return {
        cases,
        isSeen: seen.length > 0,
        weigh: (from, to) => {
          const left = seen.filter(({ index }) => index < from || index >= to);
          return left.length === seen.length
            ? { weighed: all, isCovered: false }
            : { weighed: weighSeen(left), isCovered: true };
        },
      };
    },
  };
};

const likelihoodsOf = (
  model: SuspectModel,
  { cases }: RouteCases,
  observation: Observation,
): Float64Array => {
  const likelihood = likelihoodOf(model, observation);
  return Float64Array.from(cases, ({ faults, flexes }) => likelihood(faults, flexes));
};

const weighCases = (
  model: SuspectModel,
  { cases, sharedStates }: RouteCases,
  key: string,
  likelihoods: readonly Float64Array[],
): Weighed => {
  const weights = new Float64Array(cases.length);
  const sums = new Float64Array(sharedStates);
  const namedSums = new Float64Array(sharedStates);
  let sound = 0;
  cases.forEach(({ prior, suspects, shared }, at) => {
    let weight = prior;
    for (const likelihood of likelihoods) weight *= likelihood[at] as number;
    weights[at] = weight;
    sums[shared] = (sums[shared] as number) + weight;
    if (suspects.length === 0) sound += weight;
    if (suspects.every((suspect) => model.suspects[suspect]?.where !== 'other'))
      namedSums[shared] = (namedSums[shared] as number) + weight;
  });
  return { key, weights, sums, namedSums, sound };
};

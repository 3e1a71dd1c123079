// The exact posterior over faults: routes are independent once the faults they share and the state of the leads
// are known, so each is summed on its own and the shared ones by elimination. Exact for at most one failing lead,
// up to two own faults a route and any number of shared ones; refuses evidence on what the model does not have.
import { type Evidence, isTelling } from './evidence.js';
import { type LeadCase, leadCases } from './lead-cases.js';
import { linkedRoutes } from './linked-routes.js';
import type { Posterior, Slice } from './posterior.js';
import { type RouteWeights, routeWeigher, type Weighed } from './route-weights.js';
import type { SuspectModel } from './suspect-model.js';
import { type GroupWeight, weighGroup } from './weigh-group.js';

/**
 * The posterior for this evidence alone; to weigh a growing record again and again, keep a `faultWeigher`.
 * @param evidence in the order in which it was observed: it tells when a lead may have failed.
 * @throws RangeError for what the model does not have, or evidence that nothing in it explains, which
 * only a model without noise can meet.
 */
export const weighFaults = (model: SuspectModel, evidence: Evidence): Posterior =>
  faultWeigher(model)(evidence);

/** Weighs any evidence on one board, and keeps what it worked out for each observation. */
export const faultWeigher = (model: SuspectModel): ((evidence: Evidence) => Posterior) => {
  const weighers = model.routes.map((route) => routeWeigher(model, route));
  return (evidence) => {
    const telling = evidence.filter(isTelling);
    return weighRoutes(
      model,
      telling,
      weighers.map((weigh) => weigh(telling)),
    );
  };
};

const weighRoutes = (
  model: SuspectModel,
  telling: Evidence,
  routes: readonly RouteWeights[],
): Posterior => {
  const groups = linkedRoutes(routes.map(({ cases }) => cases.scope));
  const weigh = groupWeigher(model, routes);
  const states = leadCases(model, telling).map((leadCase) => {
    const weights = groups.map((group) => weigh(group, leadCase));
    return { leadCase, weights, log: Math.log(leadCase.prior) + total(weights, 'logTotal') };
  });
  const most = Math.max(...states.map(({ log }) => log));
  if (!Number.isFinite(most)) throw new RangeError('no fault of this model explains the evidence');
  const sum = states.reduce((all, { log }) => all + Math.exp(log - most), 0);
  const weighed = states
    .map((state) => ({ ...state, probability: Math.exp(state.log - most) / sum }))
    .filter(({ probability }) => probability > 0);

  const slices = routes.map(() => new Map<string, Slice>());
  for (const { leadCase, weights, probability } of weighed)
    groups.forEach((group, at) => {
      const shared = (weights[at] as GroupWeight).shared();
      group.forEach((route, member) => {
        addSlice(slices[route] as Map<string, Slice>, leadCase, {
          weighed: (routes[route] as RouteWeights).weigh(leadCase),
          shared: shared[member] as Float64Array,
          probability,
        });
      });
    });

  const share = (part: 'logNamed' | 'logSound', lead: boolean): number =>
    weighed.reduce(
      (all, { leadCase, weights, probability }) =>
        lead || leadCase.lead === null
          ? all + probability * Math.exp(total(weights, part) - total(weights, 'logTotal'))
          : all,
      0,
    );
  return {
    model,
    leads: weighed.map(({ leadCase, probability }) => ({ case: leadCase, probability })),
    routes: routes.map(({ cases, isSeen }, index) => ({
      cases,
      isSeen,
      slices: [...(slices[index] as Map<string, Slice>).values()],
    })),
    none: Math.min(1, share('logSound', false)),
    other: Math.max(0, 1 - share('logNamed', true)),
  };
};

/** Groups are weighed once for each choice of observations that a lead explains. */
const groupWeigher = (
  model: SuspectModel,
  routes: readonly RouteWeights[],
): ((group: readonly number[], leadCase: LeadCase) => GroupWeight) => {
  const known = new Map<string, GroupWeight>();
  return (group, leadCase) => {
    const members = group.map((index) => {
      const { cases, weigh } = routes[index] as RouteWeights;
      return { cases, weighed: weigh(leadCase) };
    });
    const key = `${group[0]} ${members.map(({ weighed }) => weighed.key).join(';')}`;
    const weight = known.get(key) ?? weighGroup(model, members);
    known.set(key, weight);
    return weight;
  };
};

const total = (
  weights: readonly GroupWeight[],
  part: 'logTotal' | 'logNamed' | 'logSound',
): number => weights.reduce((sum, weight) => sum + weight[part], 0);

const addSlice = (
  slices: Map<string, Slice>,
  { lead, now }: LeadCase,
  part: { weighed: Weighed; shared: Float64Array; probability: number },
): void => {
  const { weighed, shared, probability } = part;
  const covers = weighed.isCovered ? lead : null;
  const off = now ? lead : null;
  const key = `${weighed.key} ${covers} ${off}`;
  const slice = slices.get(key) ?? {
    lead: covers,
    now: off,
    weights: weighed.weights,
    scale: new Float64Array(shared.length),
  };
  slices.set(key, slice);
  shared.forEach((state, place) => {
    const sum = weighed.sums[place] as number;
    if (sum > 0) slice.scale[place] = (slice.scale[place] as number) + (probability * state) / sum;
  });
};

// The exact posterior over faults: routes are independent once the faults they share and the state of the leads
// are known, so each is summed on its own and the shared ones by elimination. Exact for at most one failing lead and
// up to two faults a route; refuses evidence on what the model does not have.
import { type Evidence, isTelling } from './evidence.js';
import { type LeadCase, leadCases } from './lead-cases.js';
import { linkedRoutes } from './linked-routes.js';
import type { Posterior, Slice } from './posterior.js';
import { remembering } from './remembering.js';
import { type RouteWeights, routeWeigher, type Seen, type Weighed } from './route-weights.js';
import type { SuspectModel } from './suspect-model.js';
import { lookedAt } from './views.js';
import { type GroupMember, type GroupWeight, weighGroup } from './weigh-group.js';

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
  const weighLinked = groupWeigher(model);
  return (evidence) => {
    const telling = evidence.filter(isTelling);
    const onRoute = model.routes.map((): Seen[] => []);
    telling.forEach((observation, index) => {
      onRoute[lookedAt(model, observation).route.index]?.push({ index, observation });
    });
    const routes = weighers.map(({ route, weigh }) => weigh(onRoute[route.index] as Seen[]));
    return weighRoutes(model, telling, routes, weighLinked);
  };
};

const weighRoutes = (
  model: SuspectModel,
  telling: Evidence,
  routes: readonly RouteWeights[],
  weighLinked: GroupWeigher,
): Posterior => {
  const groups = linkedRoutes(routes.map(({ cases }) => cases.scope));
  const states = leadCases(model, telling).map((leadCase) => {
    const members = routes.map(({ cases, weigh }) => ({
      cases,
      ...weigh(leadCase.from, leadCase.to),
    }));
    const weights = groups.map((group) =>
      weighLinked(group.map((route) => members[route] as (typeof members)[number])),
    );
    const log = Math.log(leadCase.prior) + total(weights, 'logTotal');
    return { leadCase, members, weights, log };
  });
  const most = Math.max(...states.map(({ log }) => log));
  if (!Number.isFinite(most)) throw new RangeError('no fault of this model explains the evidence');
  const sum = states.reduce((all, { log }) => all + Math.exp(log - most), 0);
  const weighed = states
    .map((state) => ({ ...state, probability: Math.exp(state.log - most) / sum }))
    .filter(({ probability }) => probability > leastState);

  const slices = routes.map(() => new Map<string, Slice>());
  for (const { leadCase, members, weights, probability } of weighed)
    groups.forEach((group, at) => {
      const shared = (weights[at] as GroupWeight).shared();
      group.forEach((route, member) => {
        addSlice(slices[route] as Map<string, Slice>, leadCase, {
          ...(members[route] as (typeof members)[number]),
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

/** States of the leads less likely than this are passed over. */
const leastState = 1e-12;

type GroupWeigher = (members: readonly GroupMember[]) => GroupWeight;

/** Groups are weighed once for the same observations on their routes. */
const groupWeigher = (model: SuspectModel): GroupWeigher => {
  const weightFor = remembering<GroupWeight>(mostRemembered);
  return (members) =>
    weightFor(members.map(({ weighed }) => weighed.key).join(';'), () =>
      weighGroup(model, members),
    );
};

const mostRemembered = 1000;

const total = (
  weights: readonly GroupWeight[],
  part: 'logTotal' | 'logNamed' | 'logSound',
): number => weights.reduce((sum, weight) => sum + weight[part], 0);

const addSlice = (
  slices: Map<string, Slice>,
  { lead, now }: LeadCase,
  part: { weighed: Weighed; isCovered: boolean; shared: Float64Array; probability: number },
): void => {
  const { weighed, isCovered, shared, probability } = part;
  const covers = isCovered ? lead : null;
  const off = now ? lead : null;
  const key = `${weighed.key} ${covers} ${off}`;
  const slice = slices.get(key) ?? {
    lead: covers,
    now: off,
    sound: weighed.sound,
    weights: weighed.weights,
    scale: new Float64Array(shared.length),
  };
  slices.set(key, slice);
  shared.forEach((state, place) => {
    const sum = weighed.sums[place] as number;
    if (sum > 0) slice.scale[place] = (slice.scale[place] as number) + (probability * state) / sum;
  });
};

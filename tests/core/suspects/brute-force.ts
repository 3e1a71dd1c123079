// The posterior by trying everything: each state of each suspect, each lead off over each stretch of observations,
// what is seen found by walking the line step by step. Slow, and shares nothing with the code under test but the
// model, the meter's classes and the channel.
import {
  findingProbabilities,
  tellingFindings,
  tellingVerdicts,
  verdictProbabilities,
} from '../../../src/core/suspects/channel.js';
import type { Evidence, Observation } from '../../../src/core/suspects/evidence.js';
import { showsOf } from '../../../src/core/suspects/shows.js';
import type { Sight } from '../../../src/core/suspects/sight.js';
import type { Route, SuspectModel } from '../../../src/core/suspects/suspect-model.js';
import { look, type State, type States } from './walk-the-line.js';

export interface BruteForce {
  /** Probability of the evidence. */
  readonly evidence: number;
  readonly none: number;
  readonly other: number;
  readonly leads: ReadonlyMap<string, number>;
  readonly suspects: readonly number[];
  /** By route: the lead was off when it was read, something unnamed is at fault on it, and neither lead nor any place. */
  readonly routes: readonly {
    readonly lead: number;
    readonly other: number;
    readonly none: number;
  }[];
  /** Distribution over the places at fault and the lead off now, as keys. */
  readonly places: ReadonlyMap<string, number>;
}

export const bruteForce = (model: SuspectModel, observations: Evidence): BruteForce => {
  const evidence = observations.filter((seen) =>
    seen.kind === 'press'
      ? seen.finding !== 'inconclusive'
      : seen.verdict !== 'unsure' && seen.verdict !== 'unread',
  );
  const { suspects, routes, leads } = model;
  const sums = {
    all: 0,
    none: 0,
    other: 0,
    leads: new Map<string, number>(),
    suspects: suspects.map(() => 0),
    routes: routes.map(() => ({ lead: 0, other: 0, none: 0 })),
    places: new Map<string, number>(),
  };
  const known = new Map<string, number>();
  /** Of what was seen on one route, but for what a lead explains; flexing is one state of the whole route. */
  const likelihood = (route: Route, states: States, from: number, to: number): number => {
    const mine = route.seats.map(({ suspect }) => states[suspect]).join();
    const key = `${route.index} ${from} ${to} ${mine}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const seen = evidence.filter(
      (one, i) => routeOf(model, one) === route && (i < from || i >= to),
    );
    const { flexes } = model.noise;
    const given = (isFlexing: boolean): number =>
      seen.reduce((all, one) => all * likelihoodOf(model, route, one, states, isFlexing), 1);
    const value = (1 - flexes) * given(false) + flexes * given(true);
    known.set(key, value);
    return value;
  };
  const leadStates = everyLead(model, evidence).filter(({ prior }) => prior > 0);
  const between = new Map<string, ReadonlySet<Route>>();
  const seenBetween = (from: number, to: number): ReadonlySet<Route> => {
    const key = `${from} ${to}`;
    const routesSeen =
      between.get(key) ?? new Set(evidence.slice(from, to).map((one) => routeOf(model, one)));
    between.set(key, routesSeen);
    return routesSeen;
  };
  const seenRoutes = new Set(evidence.map((one) => routeOf(model, one)));
  for (const [states, prior] of everyState(model)) {
    for (const { lead, from, to, now, prior: leadPrior } of leadStates) {
      let weight = prior * leadPrior;
      for (const route of seenRoutes) weight *= likelihood(route, states, from, to);
      if (weight === 0) continue;
      const faulty = suspects.filter(({ index }) => states[index] !== 'sound');
      sums.all += weight;
      if (faulty.length === 0 && lead === null) sums.none += weight;
      if (faulty.some(({ where }) => where === 'other')) sums.other += weight;
      if (lead !== null) add(sums.leads, lead, weight);
      for (const { index } of faulty)
        sums.suspects[index] = (sums.suspects[index] as number) + weight;
      routes.forEach((route, at) => {
        const covered = from < to && seenBetween(from, to).has(route);
        const onRoute = faulty.filter(({ index }) =>
          route.seats.some(({ suspect }) => suspect === index),
        );
        const sum = sums.routes[at] as (typeof sums.routes)[number];
        if (covered) sum.lead += weight;
        else if (onRoute.length === 0) sum.none += weight;
        if (onRoute.some(({ where }) => where === 'other')) sum.other += weight;
      });
      add(sums.places, `${now ? lead : null} ${faulty.map(({ index }) => index).join()}`, weight);
    }
  }
  for (const lead of Object.keys(leads)) add(sums.leads, lead, 0);
  const share = (map: ReadonlyMap<string, number>): Map<string, number> =>
    new Map([...map].map(([key, weight]) => [key, weight / sums.all]));
  return {
    evidence: sums.all,
    none: sums.none / sums.all,
    other: sums.other / sums.all,
    leads: share(sums.leads),
    suspects: sums.suspects.map((weight) => weight / sums.all),
    routes: sums.routes.map(({ lead, other, none }) => ({
      lead: lead / sums.all,
      other: other / sums.all,
      none: none / sums.all,
    })),
    places: share(sums.places),
  };
};

const add = (map: Map<string, number>, key: string, weight: number): void =>
  void map.set(key, (map.get(key) ?? 0) + weight);

/** All states of the board with at most two faults a route, with their priors. */
const everyState = (model: SuspectModel): [States, number][] => {
  const along = model.routes.map(({ seats }) => [...new Set(seats.map(({ suspect }) => suspect))]);
  const isTooMuch = (states: States): boolean =>
    along.some((suspects) => {
      let faults = 0;
      for (const suspect of suspects) if ((states[suspect] ?? 'sound') !== 'sound') faults += 1;
      return faults > 2;
    });
  let boards: [States, number][] = [[[], 1]];
  for (const { modes } of model.suspects) {
    const sound = 1 - modes.reduce((sum, { prior }) => sum + prior, 0);
    const all: [State, number][] = [
      ['sound', sound],
      ...modes.map(({ mode, prior }): [State, number] => [mode, prior]),
    ];
    const options = all.filter(([, share]) => share > 0);
    boards = boards.flatMap(([states, prior]) =>
      options
        .map(([state, share]): [States, number] => [[...states, state], prior * share])
        .filter(([extended]) => !isTooMuch(extended)),
    );
  }
  return boards;
};

const everyLead = (model: SuspectModel, evidence: Evidence) => {
  const n = evidence.length;
  const { 'ground-clip': clip, 'walking-lead': walking } = model.leads;
  const states = [
    { lead: null as string | null, from: 0, to: 0, now: false, prior: (1 - clip - walking) ** n },
  ];
  for (const [lead, hazard] of Object.entries(model.leads))
    for (let from = 0; from < n; from += 1) {
      let to = from;
      while (to < n && couldBeOff(model, lead, evidence[to] as Observation)) to += 1;
      if (to === from) continue;
      const stays = to === n || (lead === 'ground-clip' && evidence[to]?.clipMoved === true);
      states.push({
        lead,
        from,
        to,
        now: to === n,
        prior: (1 - clip - walking) ** from * hazard * (stays ? 1 : 0.2),
      });
    }
  return states;
};

const couldBeOff = (model: SuspectModel, lead: string, seen: Observation): boolean => {
  if (lead === 'ground-clip' && seen.clipMoved === true) return false;
  if (seen.kind === 'press') return seen.finding === 'steady-open';
  const overload = routeOf(model, seen).expected === 'overload';
  return seen.verdict === 'open' || (overload && seen.verdict === 'normal');
};

const routeOf = ({ routes }: SuspectModel, seen: Observation): Route =>
  routes.find(({ pins, line }) =>
    seen.kind === 'pin' ? pins.includes(seen.pin) : line === seen.line,
  ) as Route;

const likelihoodOf = (
  model: SuspectModel,
  route: Route,
  seen: Observation,
  states: States,
  isFlexing: boolean,
): number => {
  const { noise, measure } = model;
  const overloadIsNormal = route.expected === 'overload';
  const shows = (sight: Sight) => showsOf(route, sight, measure);
  if (seen.kind !== 'press') {
    const sight = look(route, states, seen, () => false);
    const missed = seen.kind === 'pin' ? noise.missedPin : noise.missedPlace;
    const told = verdictProbabilities(
      { shows: shows(sight), intermittent: sight.intermittent, overloadIsNormal },
      { missed, misjudged: noise.misjudged },
    );
    return told[(tellingVerdicts as readonly string[]).indexOf(seen.verdict)] as number;
  }
  const found = (presses: (suspect: number) => boolean): number => {
    const released = look(route, states, seen, () => false);
    const pressed = look(route, states, seen, presses);
    const unmoved =
      released.left === pressed.left &&
      released.right === pressed.right &&
      released.load === pressed.load;
    const told = findingProbabilities(
      { released: shows(released), pressed: shows(pressed), unmoved, overloadIsNormal },
      noise,
    );
    return told[(tellingFindings as readonly string[]).indexOf(seen.finding)] as number;
  };
  const { part } = seen;
  return part === null || isFlexing
    ? found(() => true)
    : found((suspect) => model.suspects[suspect]?.pressedAt.includes(part) ?? false);
};

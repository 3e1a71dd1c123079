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
import type { FaultMode } from '../../../src/core/suspects/fault-modes.js';
import { showsOf } from '../../../src/core/suspects/shows.js';
import type { Sight } from '../../../src/core/suspects/sight.js';
import type { Route, SuspectModel } from '../../../src/core/suspects/suspect-model.js';

type State = FaultMode | 'sound';
type States = readonly State[];

export interface BruteForce {
  /** Probability of the evidence. */
  readonly evidence: number;
  readonly none: number;
  readonly other: number;
  readonly leads: ReadonlyMap<string, number>;
  readonly suspects: readonly number[];
  /** By route, then by cause as `where id`. */
  readonly causes: readonly ReadonlyMap<string, number>[];
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
    causes: routes.map(() => new Map<string, number>()),
    places: new Map<string, number>(),
  };
  const known = new Map<string, number>();
  const likelihood = (index: number, states: States): number => {
    const seen = evidence[index] as Observation;
    const route = routeOf(model, seen);
    const key = `${index} ${route.seats.map(({ suspect }) => states[suspect]).join()}`;
    const value = known.get(key) ?? likelihoodOf(model, route, seen, states);
    known.set(key, value);
    return value;
  };
  const leadStates = everyLead(model, evidence);
  for (const [states, prior] of everyState(model)) {
    for (const { lead, from, to, now, prior: leadPrior } of leadStates) {
      let weight = prior * leadPrior;
      for (let i = 0; i < evidence.length && weight > 0; i += 1)
        if (i < from || i >= to) weight *= likelihood(i, states);
      if (weight === 0) continue;
      const faulty = suspects.filter(({ index }) => states[index] !== 'sound');
      sums.all += weight;
      if (faulty.length === 0 && lead === null) sums.none += weight;
      if (faulty.some(({ where }) => where === 'other')) sums.other += weight;
      if (lead !== null) add(sums.leads, lead, weight);
      for (const { index } of faulty)
        sums.suspects[index] = (sums.suspects[index] as number) + weight;
      routes.forEach((route, at) => {
        const covered = evidence.some(
          (seen, i) => i >= from && i < to && routeOf(model, seen) === route,
        );
        const cause = covered ? `lead ${lead}` : nearest(model, route, states);
        add(sums.causes[at] as Map<string, number>, cause, weight);
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
    causes: sums.causes.map(share),
    places: share(sums.places),
  };
};

const add = (map: Map<string, number>, key: string, weight: number): void =>
  void map.set(key, (map.get(key) ?? 0) + weight);

/** All states of the board with at most two own faults a route, with their priors. */
const everyState = (model: SuspectModel): [States, number][] => {
  const own = model.routes.map(({ seats }) =>
    [...new Set(seats.map(({ suspect }) => suspect))].filter((one) => !model.shared.has(one)),
  );
  const isTooMuch = (states: States): boolean =>
    own.some((suspects) => {
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
  const all = found(() => true);
  if (part === null) return all;
  const own = found((suspect) => model.suspects[suspect]?.pressedAt.includes(part) ?? false);
  return (1 - noise.flexes) * own + noise.flexes * all;
};

const openAtRest: readonly State[] = ['broken', 'loose'];
const openPressed: readonly State[] = ['broken', 'cracked'];

/** Walks outwards from the probe, stop by stop, until the line is open. */
const look = (
  route: Route,
  states: States,
  seen: Observation,
  presses: (suspect: number) => boolean,
): Sight => {
  const isOpen = (suspect: number): boolean =>
    (presses(suspect) ? openPressed : openAtRest).includes(states[suspect] as State);
  const loads: string[] = [];
  let intermittent = false;
  const notice = (suspect: number, counts: boolean, inTheWay: boolean): void => {
    const state = states[suspect];
    if (state === 'loose' || state === 'cracked' || state === 'bridged') intermittent = true;
    if (!counts) return;
    if (state === 'shorted' || (state === 'bridged' && presses(suspect))) loads.push('short');
    if (state === 'leaky') loads.push('low');
    if (state === 'raised' && inTheWay) loads.push('high');
  };
  const at = (stop: number) =>
    route.seats.filter((seat) => seat.at === stop && seat.sits !== 'entry');
  const isBroken = (stop: number): boolean =>
    at(stop).some(({ suspect, sits }) => sits === 'series' && isOpen(suspect));
  const pin = seen.kind === 'place' ? null : (seen.pin ?? route.pins[0]);
  const gap = seen.kind === 'place' ? gapOf(route, seen.place) : 0;
  const entries = route.seats.filter(({ sits }) => sits === 'entry');
  const own = entries.find((entry) => entry.pin === pin);
  if (own !== undefined && isOpen(own.suspect)) {
    notice(own.suspect, false, true);
    return { left: gap - 1, right: gap, load: 'none', intermittent };
  }
  const last = Math.max(route.stops.length, 1);
  let right = gap;
  while (right < last && !isBroken(right)) {
    for (const { suspect } of at(right)) notice(suspect, true, true);
    right += 1;
  }
  if (right < last) for (const { suspect } of at(right)) notice(suspect, false, true);
  let left = gap - 1;
  while (left >= 0 && !isBroken(left)) {
    for (const { suspect } of at(left)) notice(suspect, true, false);
    left -= 1;
  }
  if (left >= 0) for (const { suspect } of at(left)) notice(suspect, false, false);
  if (left < 0)
    for (const entry of entries) {
      const wasIntermittent: boolean = intermittent;
      notice(entry.suspect, true, entry === own);
      if (entry !== own) intermittent = wasIntermittent;
    }
  const load = (['short', 'low', 'high'] as const).find((one) => loads.includes(one)) ?? 'none';
  return { left, right: right < last ? right : Number.POSITIVE_INFINITY, load, intermittent };
};

const gapOf = (
  { stops }: Route,
  place: Extract<Observation, { kind: 'place' }>['place'],
): number => {
  if (place.side === 'chip') return stops.findIndex(({ kind }) => kind === 'chip');
  const part = stops.findIndex(({ id }) => id === place.part);
  return place.side === 'near' ? part : part + 1;
};

const nearest = (model: SuspectModel, route: Route, states: States): string => {
  const isFaulty = ({ suspect }: { suspect: number }): boolean => states[suspect] !== 'sound';
  const order = [
    ...route.seats.filter(({ sits }) => sits === 'entry'),
    ...route.seats.filter(({ sits }) => sits !== 'entry').sort((a, b) => a.at - b.at),
  ];
  const seat = order.find(isFaulty);
  const suspect = seat === undefined ? undefined : model.suspects[seat.suspect];
  return suspect === undefined ? 'none ' : `${suspect.where} ${suspect.id}`;
};

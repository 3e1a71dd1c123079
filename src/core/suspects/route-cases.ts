// All that can be wrong on one route at once: up to two faults, its own or shared with other routes. Three faults on
// one line are rarer than anything that is shown, and weighing them would cost many times as much.
import type { SeatedFault } from './sight.js';
import { priorOf, type Route, type SuspectModel, statesOf } from './suspect-model.js';

/** Some suspects at fault on the route, each in one mode. */
export interface FaultCase {
  readonly suspects: readonly number[];
  readonly faults: readonly SeatedFault[];
  /** Pressing anywhere acts on the whole line; null where nothing was pressed, so that it does not matter. */
  readonly flexes: boolean | null;
  /** Probability beforehand of the route's own part; that of shared faults is counted once for all routes. */
  readonly prior: number;
  /** The joint state of the shared suspects, as an index in the order of a `Factor`. */
  readonly shared: number;
}

export interface RouteCases {
  readonly route: Route;
  readonly cases: readonly FaultCase[];
  /** Shared suspects of the route, and the number of states of each. */
  readonly scope: readonly number[];
  readonly states: readonly number[];
  /** Number of joint states of the shared suspects. */
  readonly sharedStates: number;
}

/** @param isPressed something on the route was pressed: then every case comes twice, with and without flexing. */
export const routeCases = (model: SuspectModel, route: Route, isPressed: boolean): RouteCases => {
  const members = [...new Set(route.seats.map(({ suspect }) => suspect))];
  const scope = members.filter((suspect) => model.shared.has(suspect));
  const local = members.filter((suspect) => !model.shared.has(suspect));
  const states = scope.map((suspect) => statesOf(model, suspect));
  const cases = casesOf(
    local.reduce((all, suspect) => all * (1 - priorOf(model, suspect)), 1),
    [
      ...local.flatMap((suspect) => ownFaults(model, route, suspect)),
      ...scope.flatMap((suspect, place) =>
        sharedFaults(model, route, suspect, sizeOf(states.slice(place + 1))),
      ),
    ],
  );
  return {
    route,
    cases: isPressed ? flexing(model, cases) : cases,
    scope,
    states,
    sharedStates: sizeOf(states),
  };
};

/** One suspect at fault in one mode. */
interface SingleFault {
  readonly suspect: number;
  readonly faults: readonly SeatedFault[];
  /** How much likelier it is beforehand than that the suspect is sound; 1 where that is counted elsewhere. */
  readonly odds: number;
  /** What it adds to the index of the joint state of the shared suspects. */
  readonly shared: number;
}

const ownFaults = (model: SuspectModel, route: Route, suspect: number): SingleFault[] => {
  const sound = 1 - priorOf(model, suspect);
  return modesOn(model, route, suspect).map(({ faults, prior }) => ({
    suspect,
    faults,
    odds: prior / sound,
    shared: 0,
  }));
};

const sharedFaults = (
  model: SuspectModel,
  route: Route,
  suspect: number,
  stride: number,
): SingleFault[] =>
  modesOn(model, route, suspect).map(({ faults }, at) => ({
    suspect,
    faults,
    odds: 1,
    shared: (at + 1) * stride,
  }));

const modesOn = ({ suspects }: SuspectModel, route: Route, suspect: number) => {
  const seats = route.seats.filter((seat) => seat.suspect === suspect);
  return (suspects[suspect]?.modes ?? []).map(({ mode, prior }) => ({
    prior,
    faults: seats.map((seat) => ({ seat, mode })),
  }));
};

/** No fault, each alone, and each two of different suspects. */
const casesOf = (sound: number, singles: readonly SingleFault[]): FaultCase[] => {
  const none: FaultCase = { suspects: [], faults: [], flexes: null, prior: sound, shared: 0 };
  const alone = singles.map((one) => withFault(none, one));
  const pairs = alone.flatMap((first, at) =>
    singles
      .slice(at + 1)
      .flatMap((second) =>
        second.suspect === first.suspects[0] ? [] : [withFault(first, second)],
      ),
  );
  return [none, ...alone, ...pairs];
};

const withFault = (
  { suspects, faults, flexes, prior, shared }: FaultCase,
  added: SingleFault,
): FaultCase => ({
  suspects: [...suspects, added.suspect],
  faults: [...faults, ...added.faults],
  flexes,
  prior: prior * added.odds,
  shared: shared + added.shared,
});

const flexing = ({ noise: { flexes } }: SuspectModel, cases: readonly FaultCase[]): FaultCase[] =>
  [true, false].flatMap((state) =>
    cases.map((one) => ({
      ...one,
      flexes: state,
      prior: one.prior * (state ? flexes : 1 - flexes),
    })),
  );

const sizeOf = (states: readonly number[]): number =>
  states.reduce((size, count) => size * count, 1);

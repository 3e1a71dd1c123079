// All that can be wrong on one route at once: up to two faults of its own, beside any faults it shares with other
// routes. The cases are laid out as a table of own cases by shared states, the shared ones changing fastest.
import type { SeatedFault } from './sight.js';
import { mostFaultsALine, type Route, type SuspectModel, statesOf } from './suspect-model.js';

/** Some suspects at fault on the route, each in one mode. */
export interface FaultCase {
  readonly suspects: readonly number[];
  readonly faults: readonly SeatedFault[];
  /** Pressing anywhere acts on the whole line; null where nothing was pressed, so that it does not matter. */
  readonly flexes: boolean | null;
  /** Probability beforehand; for shared states 1, for their prior is counted once for all routes. */
  readonly prior: number;
}

export interface RouteCases {
  readonly route: Route;
  readonly own: readonly FaultCase[];
  /** Shared suspects of the route, and their joint states in the order of a `Factor`. */
  readonly scope: readonly number[];
  readonly states: readonly number[];
  readonly shared: readonly FaultCase[];
}

/** @param isPressed something on the route was pressed: then every case comes twice, with and without flexing. */
export const routeCases = (model: SuspectModel, route: Route, isPressed: boolean): RouteCases => {
  const members = [...new Set(route.seats.map(({ suspect }) => suspect))];
  const scope = members.filter((suspect) => model.shared.has(suspect));
  const local = members.filter((suspect) => !model.shared.has(suspect));
  const states = scope.map((suspect) => statesOf(model, suspect));
  return {
    route,
    own: isPressed ? flexing(model, ownCases(model, route, local)) : ownCases(model, route, local),
    scope,
    states,
    shared: sharedCases(model, route, scope),
  };
};

const allSound: FaultCase = { suspects: [], faults: [], flexes: null, prior: 1 };

const flexing = ({ noise: { flexes } }: SuspectModel, cases: readonly FaultCase[]): FaultCase[] =>
  [true, false].flatMap((state) =>
    cases.map((one) => ({
      ...one,
      flexes: state,
      prior: one.prior * (state ? flexes : 1 - flexes),
    })),
  );

const ownCases = (model: SuspectModel, route: Route, local: readonly number[]): FaultCase[] => {
  let cases = [allSound];
  for (const suspect of local) {
    const modes = modesOf(model, route, suspect);
    const sound = modes.reduce((left, { prior }) => left - prior, 1);
    cases = cases.flatMap((one) => {
      const still = { ...one, prior: one.prior * sound };
      if (one.suspects.length === mostFaultsALine) return [still];
      return [still, ...modes.map((mode) => withFault(one, suspect, mode, one.prior * mode.prior))];
    });
  }
  return cases;
};

const sharedCases = (model: SuspectModel, route: Route, scope: readonly number[]): FaultCase[] =>
  scope.reduce<FaultCase[]>(
    (cases, suspect) =>
      cases.flatMap((one) => [
        one,
        ...modesOf(model, route, suspect).map((mode) => withFault(one, suspect, mode, 1)),
      ]),
    [allSound],
  );

const withFault = (
  { suspects, faults, flexes }: FaultCase,
  suspect: number,
  mode: SeatedMode,
  prior: number,
): FaultCase => ({
  suspects: [...suspects, suspect],
  faults: [...faults, ...mode.faults],
  flexes,
  prior,
});

interface SeatedMode {
  readonly prior: number;
  readonly faults: readonly SeatedFault[];
}

const modesOf = (model: SuspectModel, route: Route, suspect: number): SeatedMode[] => {
  const seats = route.seats.filter((seat) => seat.suspect === suspect);
  return (model.suspects[suspect]?.modes ?? []).map(({ mode, prior }) => ({
    prior,
    faults: seats.map((seat) => ({ seat, mode })),
  }));
};

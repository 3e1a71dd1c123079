// All that can be wrong on one route at once: up to two faults of its own, beside any faults it shares with other
// routes. The cases are laid out as a table of own cases by shared states, the shared ones changing fastest.
import type { SeatedFault } from './sight.js';
import { mostFaultsALine, type Route, type SuspectModel, statesOf } from './suspect-model.js';

/** Some suspects at fault on the route, each in one mode. */
export interface FaultCase {
  readonly suspects: readonly number[];
  readonly faults: readonly SeatedFault[];
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

export const routeCases = (model: SuspectModel, route: Route): RouteCases => {
  const members = [...new Set(route.seats.map(({ suspect }) => suspect))];
  const scope = members.filter((suspect) => model.shared.has(suspect));
  const local = members.filter((suspect) => !model.shared.has(suspect));
  const states = scope.map((suspect) => statesOf(model, suspect));
  return {
    route,
    own: ownCases(model, route, local),
    scope,
    states,
    shared: sharedCases(model, route, scope),
  };
};

const ownCases = (model: SuspectModel, route: Route, local: readonly number[]): FaultCase[] => {
  const allSound: FaultCase = { suspects: [], faults: [], prior: 1 };
  let cases = [allSound];
  for (const suspect of local) {
    const modes = modesOf(model, route, suspect);
    const sound = modes.reduce((left, { prior }) => left - prior, 1);
    cases = cases.flatMap(({ suspects, faults, prior }) => {
      const still = { suspects, faults, prior: prior * sound };
      if (suspects.length === mostFaultsALine) return [still];
      return [
        still,
        ...modes.map((mode) => ({
          suspects: [...suspects, suspect],
          faults: [...faults, ...mode.faults],
          prior: prior * mode.prior,
        })),
      ];
    });
  }
  return cases;
};

const sharedCases = (model: SuspectModel, route: Route, scope: readonly number[]): FaultCase[] =>
  scope.reduce<FaultCase[]>(
    (cases, suspect) =>
      cases.flatMap(({ suspects, faults }) => [
        { suspects, faults, prior: 1 },
        ...modesOf(model, route, suspect).map((mode) => ({
          suspects: [...suspects, suspect],
          faults: [...faults, ...mode.faults],
          prior: 1,
        })),
      ]),
    [{ suspects: [], faults: [], prior: 1 }],
  );

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

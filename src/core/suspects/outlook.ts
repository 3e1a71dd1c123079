// What an observation may find, and how likely each finding is for given faults on the route: verdicts of a touch,
// findings of a press test. Many cases look alike from one place, so each sight is weighed once.
import {
  findingProbabilities,
  type TellingFinding,
  type TellingVerdict,
  tellingFindings,
  tellingVerdicts,
  verdictProbabilities,
} from './channel.js';
import { isTelling, type Observation } from './evidence.js';
import { showsOf } from './shows.js';
import { type SeatedFault, type Sight, sightOf, type View } from './sight.js';
import type { Route, SuspectModel } from './suspect-model.js';
import { type Look, lookedAt } from './views.js';

export interface Outlook {
  readonly outcomes: readonly (TellingVerdict | TellingFinding)[];
  /** The outcome of a lead that is off: overload, whatever the board is like. */
  readonly leadOff: TellingVerdict | TellingFinding;
  /** One probability an outcome. `flexes` as in a `FaultCase`: null weighs both. */
  readonly given: (faults: readonly SeatedFault[], flexes: boolean | null) => readonly number[];
}

/** @throws RangeError for a pin, line, place or part the model does not have. */
export const outlookOf = (model: SuspectModel, look: Look): Outlook => {
  const { route, view } = lookedAt(model, look);
  return look.kind === 'press'
    ? pressOutlook(model, route, view, look.part)
    : touchOutlook(model, route, view);
};

/** How likely the observation is for given faults; 1 whatever they are where it tells nothing. */
export const likelihoodOf = (
  model: SuspectModel,
  observation: Observation,
): ((faults: readonly SeatedFault[], flexes: boolean | null) => number) => {
  const { outcomes, given } = outlookOf(model, observation);
  if (!isTelling(observation)) return () => 1;
  const found = observation.kind === 'press' ? observation.finding : observation.verdict;
  const at = (outcomes as readonly string[]).indexOf(found);
  return (faults, flexes) => given(faults, flexes)[at] as number;
};

const nobody = (): boolean => false;
const everybody = (): boolean => true;

const touchOutlook = (model: SuspectModel, route: Route, view: View): Outlook => {
  const overloadIsNormal = route.expected === 'overload';
  const missed = view.pin === null ? model.noise.missedPlace : model.noise.missedPin;
  const known = new Map<number, readonly number[]>();
  return {
    outcomes: tellingVerdicts,
    leadOff: overloadIsNormal ? 'normal' : 'open',
    given: (faults) => {
      const sight = sightOf(view, faults, nobody);
      const key = sightKey(sight);
      const before = known.get(key);
      if (before !== undefined) return before;
      const shows = showsOf(route, sight, model.measure);
      const { intermittent } = sight;
      const { misjudged } = model.noise;
      const probabilities = verdictProbabilities(
        { shows, intermittent, overloadIsNormal },
        { missed, misjudged },
      );
      known.set(key, probabilities);
      return probabilities;
    },
  };
};

/** Pressing acts on what belongs to the part, or, where the board flexes, on the whole line. */
const pressOutlook = (
  model: SuspectModel,
  route: Route,
  view: View,
  part: string | null,
): Outlook => {
  const overloadIsNormal = route.expected === 'overload';
  const actedOn = new Set(
    model.suspects.flatMap(({ index, pressedAt }) =>
      part === null || pressedAt.includes(part) ? [index] : [],
    ),
  );
  const acts = (suspect: number): boolean => actedOn.has(suspect);
  const known = new Map<number, readonly number[]>();
  const found = (released: Sight, pressed: Sight): readonly number[] => {
    const key = sightKey(released) * keyBase * keyBase * 8 + sightKey(pressed);
    const before = known.get(key);
    if (before !== undefined) return before;
    const probabilities = findingProbabilities(
      {
        released: showsOf(route, released, model.measure),
        pressed: showsOf(route, pressed, model.measure),
        unmoved: isSame(released, pressed),
        overloadIsNormal,
      },
      model.noise,
    );
    known.set(key, probabilities);
    return probabilities;
  };
  const often = model.noise.flexes;
  return {
    outcomes: tellingFindings,
    leadOff: 'steady-open',
    given: (faults, flexes) => {
      const released = sightOf(view, faults, nobody);
      if (flexes === true) return found(released, sightOf(view, faults, everybody));
      const alone = found(released, sightOf(view, faults, acts));
      if (flexes === false) return alone;
      const flexed = found(released, sightOf(view, faults, everybody));
      return alone.map((one, at) => (1 - often) * one + often * (flexed[at] as number));
    },
  };
};

/** More stops than any line has. */
const keyBase = 4096;
const loadKeys = { none: 0, high: 1, low: 2, short: 3 } as const;

/** One number a sight, for a text would take longer to make than the sight itself. */
const sightKey = ({ left, right, load, intermittent }: Sight): number =>
  ((left + 1) * keyBase + Math.min(right, keyBase - 1)) * 8 +
  2 * loadKeys[load] +
  (intermittent ? 1 : 0);

const isSame = (a: Sight, b: Sight): boolean =>
  a.left === b.left && a.right === b.right && a.load === b.load;

// The suspects in order: how likely each place is at fault, and for every line what explains it. The causes of a
// line exclude each other and sum to 1; the suspects do not, for two places can be at fault at once.
import { doubtOf, type Posterior, type RoutePosterior, visitCases } from './posterior.js';
import { type Lead, leadHazards } from './priors.js';
import type { SeatedFault } from './sight.js';
import type { SuspectModel } from './suspect-model.js';

export interface RankedSuspect {
  readonly where: 'joint' | 'part' | 'chip' | 'lead';
  readonly id: string;
  /** The lines its fault touches; for a lead, those it would explain. */
  readonly lines: readonly string[];
  /** That it is at fault, alone or beside others. */
  readonly probability: number;
}

export interface LineCause {
  readonly where: RankedSuspect['where'] | 'other' | 'none';
  /** Empty for `other`, something no chain names, and `none`. */
  readonly id: string;
  readonly probability: number;
}

export interface LineCauses {
  readonly line: string;
  readonly pins: readonly string[];
  /** The fault nearest to the pin, or the lead that was off; likeliest first. They sum to 1. */
  readonly causes: readonly LineCause[];
}

export interface Ranking {
  /** Likeliest first. */
  readonly suspects: readonly RankedSuspect[];
  /** Nothing is at fault, neither on the board nor in the leads. */
  readonly none: number;
  /** Something is at fault that no chain names. */
  readonly other: number;
  readonly lines: readonly LineCauses[];
}

export const rankPosterior = (posterior: Posterior): Ranking => {
  const sums = posterior.routes.map(sumRoute);
  return {
    suspects: inOrder(posterior, sums),
    none: posterior.none,
    other: posterior.other,
    lines: sums.map(({ nearest }, index) => ({
      ...linePins(posterior, index),
      causes: causesOf(posterior.model, nearest),
    })),
  };
};

/** The suspects at least so likely, without a look at lines on which there can be none: the same in less time. */
export const likelySuspects = (posterior: Posterior, least: number): readonly RankedSuspect[] => {
  const doubtful = posterior.routes.filter((route) => doubtOf(route) >= least);
  return inOrder(posterior, doubtful.map(sumRoute)).filter(
    ({ probability }) => probability >= least,
  );
};

const inOrder = (posterior: Posterior, sums: readonly RouteSums[]): RankedSuspect[] =>
  [...rankedLeads(posterior), ...rankedPlaces(posterior.model, sums)].sort(likeliestFirst);

const likeliestFirst = (a: { probability: number }, b: { probability: number }): number =>
  b.probability - a.probability;

interface RouteSums {
  /** Probability that each suspect is at fault. */
  readonly faulty: ReadonlyMap<number, number>;
  /** Probability that each is the cause: a suspect, a lead, or null for none. */
  readonly nearest: ReadonlyMap<number | Lead | null, number>;
}

const sumRoute = (route: RoutePosterior): RouteSums => {
  const faulty = new Map<number, number>();
  const nearest = new Map<number | Lead | null, number>();
  visitCases(route, ({ suspects, faults }, { lead }, probability) => {
    for (const suspect of suspects) add(faulty, suspect, probability);
    add(nearest, lead ?? nearestOf(faults), probability);
  });
  return { faulty, nearest };
};

const add = <K>(sums: Map<K, number>, key: K, probability: number): void =>
  void sums.set(key, (sums.get(key) ?? 0) + probability);

/** The faulty suspect nearest to the pin. */
const nearestOf = (faults: readonly SeatedFault[]): number | null => {
  let found: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const { seat } of faults) {
    const distance = seat.sits === 'entry' ? -1 : seat.at;
    if (distance < least) [found, least] = [seat.suspect, distance];
  }
  return found;
};

const causesOf = (model: SuspectModel, nearest: RouteSums['nearest']): LineCause[] => {
  const causes = new Map<string, LineCause>();
  for (const [key, probability] of nearest) {
    const { where, id } = causeOf(model, key);
    const before = causes.get(`${where} ${id}`)?.probability ?? 0;
    causes.set(`${where} ${id}`, { where, id, probability: before + probability });
  }
  return [...causes.values()].sort(likeliestFirst);
};

const causeOf = (
  { suspects }: SuspectModel,
  key: number | Lead | null,
): Pick<LineCause, 'where' | 'id'> => {
  if (typeof key === 'string') return { where: 'lead', id: key };
  const suspect = key === null ? undefined : suspects[key];
  return suspect === undefined ? { where: 'none', id: '' } : suspect;
};

const linePins = ({ routes }: Posterior, index: number): Pick<LineCauses, 'line' | 'pins'> => {
  const { line, pins } = (routes[index] as RoutePosterior).cases.route;
  return { line, pins };
};

const rankedLeads = ({ leads, routes }: Posterior): RankedSuspect[] =>
  (Object.keys(leadHazards) as Lead[]).flatMap((lead) => {
    const lines = routes.flatMap(({ cases, slices }) =>
      slices.some((slice) => slice.lead === lead) ? [cases.route.line] : [],
    );
    if (lines.length === 0) return [];
    const probability = leads.reduce(
      (sum, known) => (known.case.lead === lead ? sum + known.probability : sum),
      0,
    );
    return [{ where: 'lead', id: lead, lines: [...new Set(lines)], probability }];
  });

/** A shared suspect has the same probability on each of its routes. */
const rankedPlaces = ({ suspects }: SuspectModel, sums: readonly RouteSums[]): RankedSuspect[] => {
  const probabilities = new Map(sums.flatMap(({ faulty }) => [...faulty]));
  return suspects.flatMap(({ index, where, id, lines }) => {
    const probability = probabilities.get(index);
    if (probability === undefined || where === 'other') return [];
    return [{ where, id, lines, probability: Math.min(1, probability) }];
  });
};

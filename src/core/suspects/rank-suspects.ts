// The suspects in order: how likely each place is at fault, and for every line what explains it. The causes of a
// line exclude each other and sum to 1; the suspects do not, for two places can be at fault at once.
import type { Evidence } from './evidence.js';
import type { Posterior, RoutePosterior } from './posterior.js';
import { visitCases } from './posterior.js';
import { type Lead, leadHazards } from './priors.js';
import type { SeatedFault } from './sight.js';
import type { SuspectModel } from './suspect-model.js';
import { weighFaults } from './weigh-faults.js';

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

/** @throws RangeError for evidence on what the model does not have. */
export const rankSuspects = (model: SuspectModel, evidence: Evidence): Ranking =>
  rankPosterior(weighFaults(model, evidence));

export const rankPosterior = (posterior: Posterior): Ranking => ({
  suspects: [...rankedLeads(posterior), ...rankedPlaces(posterior)].sort(likeliestFirst),
  none: posterior.none,
  other: posterior.other,
  lines: posterior.routes.map((route) => lineCauses(posterior.model, route)),
});

const likeliestFirst = (a: { probability: number }, b: { probability: number }): number =>
  b.probability - a.probability;

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

const rankedPlaces = ({ model, routes }: Posterior): RankedSuspect[] => {
  const probabilities = new Map<number, number>();
  for (const route of routes) {
    const own = new Map<number, number>();
    visitCases(route, (mine, shared, _slice, probability) => {
      for (const suspect of mine.suspects) own.set(suspect, (own.get(suspect) ?? 0) + probability);
      for (const suspect of shared.suspects)
        own.set(suspect, (own.get(suspect) ?? 0) + probability);
    });
    // A shared suspect has the same probability on each of its routes.
    for (const [suspect, probability] of own) probabilities.set(suspect, probability);
  }
  return [...probabilities].flatMap(([suspect, probability]) => {
    const named = model.suspects[suspect];
    if (named === undefined || named.where === 'other') return [];
    const { where, id, lines } = named;
    return [{ where, id, lines, probability: Math.min(1, probability) }];
  });
};

const lineCauses = (model: SuspectModel, route: RoutePosterior): LineCauses => {
  const causes = new Map<string, LineCause>();
  visitCases(route, (mine, shared, { lead }, probability) => {
    const cause =
      lead === null ? nearest(model, [...mine.faults, ...shared.faults]) : leadCause(lead);
    const key = `${cause.where} ${cause.id}`;
    const before = causes.get(key)?.probability ?? 0;
    causes.set(key, { ...cause, probability: before + probability });
  });
  const { line, pins } = route.cases.route;
  return { line, pins, causes: [...causes.values()].sort(likeliestFirst) };
};

const leadCause = (id: Lead): Omit<LineCause, 'probability'> => ({ where: 'lead', id });

const nearest = (
  model: SuspectModel,
  faults: readonly SeatedFault[],
): Omit<LineCause, 'probability'> => {
  const [first] = faults.toSorted((a, b) => distance(a) - distance(b));
  const suspect = first === undefined ? undefined : model.suspects[first.seat.suspect];
  return suspect === undefined
    ? { where: 'none', id: '' }
    : { where: suspect.where, id: suspect.id };
};

const distance = ({ seat }: SeatedFault): number => (seat.sits === 'entry' ? -1 : seat.at);

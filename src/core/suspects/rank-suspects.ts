// The suspects in order: how likely each place is at fault. They need not sum to 1, for two places can be at fault
// at once.
import { doubtOf, type Posterior, type RoutePosterior, visitCases } from './posterior.js';
import { type Lead, leadHazards } from './priors.js';
import type { SuspectModel } from './suspect-model.js';

export interface RankedSuspect {
  readonly where: 'joint' | 'part' | 'chip' | 'lead';
  readonly id: string;
  /** The lines its fault touches; for a lead, those it would explain. */
  readonly lines: readonly string[];
  /** That it is at fault, alone or beside others. */
  readonly probability: number;
}

/** The suspects at least so likely, likeliest first. */
export const rankSuspects = (posterior: Posterior, least: number): readonly RankedSuspect[] => {
  // A line that is less in doubt than that has no such suspect, and summing it is what takes time.
  const doubtful = posterior.routes.filter((route) => doubtOf(route) >= least);
  return [...rankedLeads(posterior), ...rankedPlaces(posterior.model, doubtful)]
    .filter(({ probability }) => probability >= least)
    .sort((a, b) => b.probability - a.probability);
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
const rankedPlaces = (
  { suspects }: SuspectModel,
  routes: readonly RoutePosterior[],
): RankedSuspect[] => {
  const probabilities = new Map(routes.flatMap((route) => [...faultyOn(route)]));
  return suspects.flatMap(({ index, where, id, lines }) => {
    const probability = probabilities.get(index);
    if (probability === undefined || where === 'other') return [];
    return [{ where, id, lines, probability: Math.min(1, probability) }];
  });
};

/** Probability that each suspect of the route is at fault. */
const faultyOn = (route: RoutePosterior): ReadonlyMap<number, number> => {
  const faulty = new Map<number, number>();
  visitCases(route, ({ suspects }, _slice, probability) => {
    for (const suspect of suspects) faulty.set(suspect, (faulty.get(suspect) ?? 0) + probability);
  });
  return faulty;
};

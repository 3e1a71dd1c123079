// Keeps the weighing of shared faults within reach: where too many parts join too many lines, the least likely
// shared faults are left out of the model, by name, until the rest can be weighed exactly.
import { widestTable } from './factor.js';
import { priorOf, type SuspectModel, sharedBy, statesOf } from './suspect-model.js';

/** Entries of the largest table that is still weighed in a moment. */
const widestAllowed = 200_000;

export const leaveOutWidest = (model: SuspectModel): SuspectModel => {
  let kept = model;
  for (;;) {
    const scopes = kept.routes.map(({ seats }) => [
      ...new Set(seats.flatMap(({ suspect }) => (kept.shared.has(suspect) ? [suspect] : []))),
    ]);
    const widest = widestTable(scopes, (suspect) => statesOf(kept, suspect));
    if (widest.entries <= widestAllowed) return kept;
    const [least] = widest.scope.toSorted((a, b) => priorOf(kept, a) - priorOf(kept, b));
    if (least === undefined) return kept;
    kept = without(kept, least);
  }
};

const without = (model: SuspectModel, suspect: number): SuspectModel => {
  const routes = model.routes.map((route) => ({
    ...route,
    seats: route.seats.filter((seat) => seat.suspect !== suspect),
  }));
  const id = model.suspects[suspect]?.id ?? '';
  return { ...model, routes, shared: sharedBy(routes), leftOut: [...model.leftOut, id] };
};

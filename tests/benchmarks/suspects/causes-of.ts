// What explains one line, as reasons that exclude each other: the lead that was off, or the fault nearest to the pin.

import { type Posterior, visitCases } from '../../../src/core/suspects/posterior.js';
import type { Lead } from '../../../src/core/suspects/priors.js';
import type { SeatedFault } from '../../../src/core/suspects/sight.js';
import type { Suspect } from '../../../src/core/suspects/suspect-model.js';

export interface Cause {
  /** A lead, a place by `nameOf`, or null where nothing is at fault. */
  readonly cause: Lead | string | null;
  readonly probability: number;
}

/** A part that carries several lines is one name, whether as a whole or on one of them. */
export const nameOf = ({ where, id }: Suspect): string => `${where} ${id}`;

/** Likeliest first; they sum to 1. */
export const causesOf = ({ model, routes }: Posterior, route: number): readonly Cause[] => {
  const own = routes[route];
  if (own === undefined) throw new RangeError(`no route ${route}`);
  const sums = new Map<Cause['cause'], number>();
  visitCases(own, ({ faults }, { lead }, probability) => {
    const suspect = model.suspects[nearest(faults) ?? -1];
    const cause = lead ?? (suspect === undefined ? null : nameOf(suspect));
    sums.set(cause, (sums.get(cause) ?? 0) + probability);
  });
  return [...sums]
    .map(([cause, probability]) => ({ cause, probability }))
    .sort((a, b) => b.probability - a.probability);
};

const nearest = (faults: readonly SeatedFault[]): number | null => {
  const distance = ({ seat }: SeatedFault): number => (seat.sits === 'entry' ? -1 : seat.at);
  const [first] = faults.toSorted((a, b) => distance(a) - distance(b));
  return first?.seat.suspect ?? null;
};

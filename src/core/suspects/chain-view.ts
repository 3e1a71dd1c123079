// One line as a chain for the screen: every joint, part, branch and chip with the probability that it is at
// fault. Plain data; refuses a line that the model does not have.
import { type Posterior, visitCases } from './posterior.js';
import type { RouteStop } from './suspect-model.js';

export interface ChainViewStop {
  readonly kind: RouteStop['kind'];
  readonly id: string;
  readonly probability: number;
}

export interface ChainView {
  readonly line: string;
  /** The pins' own joints, where several pins carry the line; otherwise the first stop is the pin's joint. */
  readonly entries: readonly { readonly pin: string; readonly probability: number }[];
  readonly stops: readonly ChainViewStop[];
  /** A lead was off when this line was read. */
  readonly lead: number;
  /** Something no chain names is at fault on this line. */
  readonly other: number;
  /** Nothing on this line is at fault, and the leads were on. */
  readonly none: number;
}

/**
 * @param pin needed only where ground pins are routes of their own.
 * @throws RangeError for a line the model does not have, or a pin that does not carry it.
 */
export const chainView = (posterior: Posterior, line: string, pin?: string): ChainView => {
  const found = posterior.routes.find(
    ({ cases: { route } }) =>
      route.line === line && (pin === undefined || route.pins.includes(pin)),
  );
  if (found === undefined) throw new RangeError(`no line ${line} to draw`);
  const { route } = found.cases;
  const stops = new Array<number>(route.stops.length).fill(0);
  const entries = new Map(route.pins.map((name) => [name, 0]));
  let lead = 0;
  let other = 0;
  let none = 0;
  visitCases(found, ({ faults }, slice, probability) => {
    if (slice.lead !== null) lead += probability;
    else if (faults.length === 0) none += probability;
    const hit = new Set<number>();
    for (const { seat } of faults) {
      if (posterior.model.suspects[seat.suspect]?.where === 'other') other += probability;
      else if (seat.pin !== null) entries.set(seat.pin, (entries.get(seat.pin) ?? 0) + probability);
      else hit.add(seat.at);
    }
    for (const at of hit) stops[at] = (stops[at] as number) + probability;
  });
  return {
    line,
    entries:
      route.pins.length === 1
        ? []
        : [...entries].map(([name, probability]) => ({ pin: name, probability })),
    stops: route.stops.map(({ kind, id }, at) => ({
      kind,
      id,
      probability: Math.min(1, stops[at] as number),
    })),
    lead,
    other,
    none,
  };
};

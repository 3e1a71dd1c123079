// What a probe sees, found by walking outwards from it stop by stop until the line is open. Shares nothing with the
// code under test but its types.
import type { Observation } from '../../../src/core/suspects/evidence.js';
import type { FaultMode } from '../../../src/core/suspects/fault-modes.js';
import type { Sight } from '../../../src/core/suspects/sight.js';
import type { Route } from '../../../src/core/suspects/suspect-model.js';

export type State = FaultMode | 'sound';
export type States = readonly State[];

const openAtRest: readonly State[] = ['broken', 'loose'];
const openPressed: readonly State[] = ['broken', 'cracked'];

/** Walks outwards from the probe, stop by stop, until the line is open. */
export const look = (
  route: Route,
  states: States,
  seen: Observation,
  presses: (suspect: number) => boolean,
): Sight => {
  const isOpen = (suspect: number): boolean =>
    (presses(suspect) ? openPressed : openAtRest).includes(states[suspect] as State);
  const loads: string[] = [];
  let intermittent = false;
  const notice = (suspect: number, counts: boolean, inTheWay: boolean): void => {
    const state = states[suspect];
    if (state === 'loose' || state === 'cracked' || state === 'bridged') intermittent = true;
    if (!counts) return;
    if (state === 'shorted' || (state === 'bridged' && presses(suspect))) loads.push('short');
    if (state === 'leaky') loads.push('low');
    if (state === 'raised' && inTheWay) loads.push('high');
  };
  const at = (stop: number) =>
    route.seats.filter((seat) => seat.at === stop && seat.sits !== 'entry');
  const isBroken = (stop: number): boolean =>
    at(stop).some(({ suspect, sits }) => sits === 'series' && isOpen(suspect));
  const pin = seen.kind === 'place' ? null : (seen.pin ?? route.pins[0]);
  const gap = seen.kind === 'place' ? gapOf(route, seen.place) : 0;
  const entries = route.seats.filter(({ sits }) => sits === 'entry');
  const own = entries.find((entry) => entry.pin === pin);
  if (own !== undefined && isOpen(own.suspect)) {
    notice(own.suspect, false, true);
    return { left: gap - 1, right: gap, load: 'none', intermittent };
  }
  const last = Math.max(route.stops.length, 1);
  let right = gap;
  while (right < last && !isBroken(right)) {
    for (const { suspect } of at(right)) notice(suspect, true, true);
    right += 1;
  }
  if (right < last) for (const { suspect } of at(right)) notice(suspect, false, true);
  let left = gap - 1;
  while (left >= 0 && !isBroken(left)) {
    for (const { suspect } of at(left)) notice(suspect, true, false);
    left -= 1;
  }
  if (left >= 0) for (const { suspect } of at(left)) notice(suspect, false, false);
  if (left < 0)
    for (const entry of entries) {
      const wasIntermittent: boolean = intermittent;
      notice(entry.suspect, true, entry === own);
      if (entry !== own) intermittent = wasIntermittent;
    }
  const load = (['short', 'low', 'high'] as const).find((one) => loads.includes(one)) ?? 'none';
  return { left, right: right < last ? right : Number.POSITIVE_INFINITY, load, intermittent };
};

const gapOf = (
  { stops }: Route,
  place: Extract<Observation, { kind: 'place' }>['place'],
): number => {
  if (place.side === 'chip') return stops.findIndex(({ kind }) => kind === 'chip');
  const part = stops.findIndex(({ id }) => id === place.part);
  return place.side === 'near' ? part : part + 1;
};

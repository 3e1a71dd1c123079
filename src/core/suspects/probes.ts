// The probes that could come next on a line, and what each may find.
import type { Route, SuspectModel } from './suspect-model.js';
import type { Look, Place } from './views.js';

export type Probe =
  /** Touch the pin again. */
  | { readonly probe: 'retake'; readonly line: string; readonly pin: string }
  /** Put the ground clip on another ground and touch the pin again. */
  | { readonly probe: 'other-ground'; readonly line: string; readonly pin: string }
  | { readonly probe: 'place'; readonly line: string; readonly place: Place }
  /** `part` is a part, the chip or the connector. */
  | { readonly probe: 'press'; readonly line: string; readonly pin: string; readonly part: string };

export type EffortOf = 'retake' | 'other-ground' | 'near' | 'far' | 'chip' | 'press';

/** Effort in retakes. Common practice, no source: small terminals take aim, a press test some cycles. */
export const defaultEffort: Readonly<Record<EffortOf, number>> = {
  retake: 1,
  'other-ground': 2,
  near: 1.5,
  far: 1.5,
  chip: 3,
  press: 4,
};

export const effortFor = (probe: Probe): EffortOf =>
  probe.probe === 'place' ? probe.place.side : probe.probe;

/** Every probe on the route, without places between which nothing can be at fault. */
export const probesOn = (
  { connector }: Pick<SuspectModel, 'connector'>,
  route: Route,
): readonly Probe[] => {
  const { line, stops, pins } = route;
  const pin = pins[0] as string;
  const touches: Probe[] = [
    ...pins.map((one): Probe => ({ probe: 'retake', line, pin: one })),
    { probe: 'other-ground', line, pin },
  ];
  // Nothing but its pin joint is known of a line without parts, and no place beyond it.
  if (!stops.some(({ kind }) => kind === 'part' || kind === 'chip')) return touches;
  const places = stops.flatMap(({ kind, id }, at): Place[] => {
    if (kind === 'chip') return stops[at - 1]?.kind === 'part' ? [] : [{ side: 'chip' }];
    if (kind !== 'part') return [];
    const follows = stops[at - 1]?.kind === 'part';
    return [
      ...(at === 0 || follows ? [] : [{ side: 'near', part: id } as const]),
      { side: 'far', part: id },
    ];
  });
  const parts = stops.flatMap(({ kind, id }) => (kind === 'part' || kind === 'chip' ? [id] : []));
  return [
    ...touches,
    ...places.map((place): Probe => ({ probe: 'place', line, place })),
    ...[...new Set([connector, ...parts])].map(
      (part): Probe => ({ probe: 'press', line, pin, part }),
    ),
  ];
};

/** Where the probe looks. */
export const lookOf = (probe: Probe): Look => {
  const { line } = probe;
  if (probe.probe === 'place') return { kind: 'place', line, place: probe.place };
  if (probe.probe === 'press') return { kind: 'press', line, part: probe.part, pin: probe.pin };
  return { kind: 'pin', pin: probe.pin };
};

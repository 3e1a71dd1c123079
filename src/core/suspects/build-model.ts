// The model of one board from its profile: every joint, part and chip along every line as a place that can be
// at fault, with its probability beforehand. Refuses nothing that a checked profile can hold.
import { type PlannedPin, planWalk } from '../profile/plan.js';
import type { Profile } from '../profile/profile-format.js';
import type { MeasureFunction, Polarity } from '../reading.js';
import { leaveOutWidest } from './leave-out.js';
import { defaultPriors, leadHazards, modeShares, type Sort } from './priors.js';
import { stopsOf } from './route-stops.js';
import { type SeatedWay, seatRoute } from './seats.js';
import {
  defaultNoise,
  type Noise,
  type Route,
  type Suspect,
  type SuspectModel,
  sharedBy,
} from './suspect-model.js';
import { createRegister } from './suspect-register.js';

interface ModelOptions {
  readonly measure?: { readonly function: MeasureFunction; readonly polarity: Polarity };
  /** Probabilities by sort of place that differ from the defaults. */
  readonly priors?: Readonly<Partial<Record<Sort, number>>>;
  readonly leads?: SuspectModel['leads'];
  readonly noise?: Partial<Noise>;
}

/** @throws RangeError for a prior outside 0 to 1. */
export const buildModel = (profile: Profile, options: ModelOptions = {}): SuspectModel => {
  const sortPriors = { ...defaultPriors, ...options.priors };
  for (const [sort, prior] of Object.entries(sortPriors))
    if (!(prior >= 0 && prior < 1)) throw new RangeError(`no prior for a ${sort}: ${prior}`);
  const lines = routedLines(profile, options);
  const register = createRegister(lines.map(({ route }) => route.stops));
  const routes = lines.map(
    (line): Route => ({ ...line.route, seats: seatRoute(profile, line, register) }),
  );
  const suspects = register.drafts.map(
    ({ sort, prior, ...draft }, index): Suspect => ({
      ...draft,
      lines: [...draft.lines],
      pressedAt: [...draft.pressedAt],
      index,
      modes: modesOf(sort, prior ?? sortPriors[sort]),
    }),
  );
  return leaveOutWidest({
    measure: options.measure?.function ?? profile.measure.function,
    connector: profile.connector.id,
    suspects,
    routes,
    shared: sharedBy(routes),
    leads: options.leads ?? leadHazards,
    noise: { ...defaultNoise, ...options.noise },
    leftOut: [],
  });
};

const modesOf = (sort: Sort, prior: number): Suspect['modes'] =>
  Object.entries(modeShares[sort]).map(([mode, share]) => ({
    mode: mode as Suspect['modes'][number]['mode'],
    prior: prior * share,
  }));

/** One route a line; ground without a chain has one a pin, since nothing but its pin joint is known of it. */
const routedLines = (profile: Profile, { measure }: ModelOptions): SeatedWay[] => {
  const byLine = new Map<string, PlannedPin[]>();
  for (const pin of planWalk(profile, measure).pins)
    byLine.set(pin.line, [...(byLine.get(pin.line) ?? []), pin]);
  const ways = [...byLine.values()].flatMap((pins) => {
    const [first] = pins;
    const apart = first?.kind === 'ground' && profile.lines[first.line]?.chain === undefined;
    return apart ? pins.map((pin) => [pin]) : [pins];
  });
  return ways.flatMap((pins, index) => {
    const [first] = pins;
    if (first === undefined) return [];
    const names = pins.map(({ pin }) => pin);
    const { stops, branches, priors } = stopsOf(profile, first.line, names);
    const { line, expected, shortLimit, kind } = first;
    const isGround = kind === 'ground';
    return [
      {
        route: { index, line, pins: names, expected, shortLimit, isGround, stops, branches },
        priors,
      },
    ];
  });
};

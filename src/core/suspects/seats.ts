// Seats every suspect of one route: the joints of its pins, then stop by stop, then what no chain names.
import type { Profile } from '../profile/profile-format.js';
import { pressedAt } from './pressed-at.js';
import type { Sort } from './priors.js';
import { pinJoint } from './route-stops.js';
import type { Route, RouteStop, Seat } from './suspect-model.js';
import { type SuspectRegister, stopKey } from './suspect-register.js';

export interface SeatedWay {
  readonly route: Omit<Route, 'seats'>;
  /** The profile's own priors, by stop. */
  readonly priors: readonly (number | null)[];
}

/**
 * A part on several routes is two suspects on each: the part as a whole, shared, and its one way through. A chip
 * on one route only is the joint of that line with the input behind it.
 */
export const seatRoute = (
  profile: Profile,
  { route, priors }: SeatedWay,
  register: SuspectRegister,
): Seat[] => {
  const { line, pins, stops, index } = route;
  const connector = profile.connector.id;
  const known = [...Object.keys(profile.parts ?? {}), connector];

  const entry = (pin: string): Seat => {
    const id = pinJoint(profile, pin);
    const named = { where: 'joint', id, sort: 'pin-joint', prior: null } as const;
    const suspect = register.at(`joint ${id}`, line, [connector], named);
    return { suspect, at: 0, sits: 'entry', pin };
  };

  const atStop = (stop: RouteStop, at: number): Seat[] => {
    const { kind, id } = stop;
    const prior = priors[at] ?? null;
    const key = stopKey(stop);
    const seat = (
      suspectKey: string,
      presses: readonly string[],
      sort: Sort,
      own: number | null,
    ) => {
      const where = kind === 'branch' ? 'part' : kind;
      const suspect = register.at(suspectKey, line, presses, { where, id, sort, prior: own });
      return { suspect, at, sits: kind === 'branch' ? 'branch' : 'series', pin: null } as const;
    };
    if (kind === 'joint') {
      const presses = pressedAt(id, known, stops, at);
      return [seat(key, presses, presses.includes(connector) ? 'pin-joint' : 'joint', prior)];
    }
    const oneWay = (own: number | null): Seat =>
      seat(`${key} on ${index}`, [id], `${kind}-on-line`, own);
    if ((register.passes.get(key) ?? 0) > 1) return [seat(key, [id], kind, prior), oneWay(null)];
    return [kind === 'chip' ? oneWay(prior) : seat(key, [id], kind, prior)];
  };

  const unnamed = { where: 'other', id: '', sort: 'unnamed', prior: null } as const;
  return [
    ...(pins.length === 1 ? [] : pins.map(entry)),
    ...stops.flatMap(atStop),
    {
      suspect: register.at(`other ${index}`, line, [], unnamed),
      at: Math.max(0, stops.length - 1),
      sits: 'series',
      pin: null,
    },
  ];
};

// The stops along a line as they can be at fault: from the profile's chain, or, where it has none, made up from
// the parts that list the line. A chain that begins with no joint gets the joint of its pin.
import type { Profile, ProfileLine } from '../profile/profile-format.js';
import type { Branch, RouteStop } from './suspect-model.js';

export interface Stops {
  readonly stops: readonly RouteStop[];
  readonly branches: readonly Branch[];
  /** Probability the profile itself gives for a stop, by index; null for the defaults. */
  readonly priors: readonly (number | null)[];
}

type Parts = NonNullable<Profile['parts']>;
type Part = Parts[string];

export const pinJoint = (profile: Profile, pin: string): string =>
  `${profile.connector.id} pin ${pin}`;

/** `pins` are the pins on the line, at least one. */
export const stopsOf = (profile: Profile, name: string, pins: readonly string[]): Stops => {
  const parts = profile.parts ?? {};
  const line = profile.lines[name];
  const chain = line?.chain ?? (line?.kind === 'ground' ? [] : impliedChain(parts, name));
  const [pin] = pins;
  const startsAtPin = chain[0] !== undefined && 'joint' in chain[0];
  const whole: NonNullable<ProfileLine['chain']> =
    pins.length === 1 && pin !== undefined && !startsAtPin
      ? [{ joint: pinJoint(profile, pin) }, ...chain]
      : chain;
  const branches: Branch[] = [];
  const stops = whole.map((stop, at): RouteStop => {
    if ('joint' in stop) return { kind: 'joint', id: stop.joint };
    if ('chip' in stop) return { kind: 'chip', id: stop.chip };
    if ('part' in stop) return { kind: 'part', id: stop.part };
    const { part, reads } = stop.shunt;
    branches.push({
      at,
      part,
      reads: reads ?? null,
      kind: partNamed(parts, part)?.kind ?? 'other',
    });
    return { kind: 'branch', id: part };
  });
  const priors = whole.map((stop, at) =>
    'joint' in stop ? (stop.prior ?? null) : (partNamed(parts, stops[at]?.id ?? '')?.prior ?? null),
  );
  return { stops, branches, priors };
};

const partNamed = (parts: Parts, id: string): Part | undefined =>
  Object.hasOwn(parts, id) ? parts[id] : undefined;

const besideTheLine: ReadonlySet<Part['kind']> = new Set(['capacitor', 'diode', 'other']);

/** Parts in the line first, in the order of the profile, with a joint on each side; the chip last. */
const impliedChain = (parts: Parts, line: string): NonNullable<ProfileLine['chain']> => {
  const along = Object.entries(parts).filter(([, part]) => part.lines.includes(line));
  const through = along.filter(([, { kind }]) => kind !== 'chip' && !besideTheLine.has(kind));
  return [
    ...along
      .filter(([, { kind }]) => besideTheLine.has(kind))
      .map(([part]) => ({ shunt: { part } })),
    ...through.flatMap(([part]) => [
      { joint: `${part} pin side, ${line}` },
      { part },
      { joint: `${part} far side, ${line}` },
    ]),
    ...along.filter(([, { kind }]) => kind === 'chip').map(([chip]) => ({ chip })),
  ];
};

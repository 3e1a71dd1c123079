// The bench with a healthy donor beside the patient, as one connector whose pins alternate: the same hands, mishaps
// and meter then walk both. The donor is another board of the same make: alike, not the same.

import { offBoard, onDonor } from '../core/profile/donor.js';
import type { Profile } from '../core/profile/profile-format.js';
import type { MeasureFunction } from '../core/reading.js';
import { healthyReading } from './healthy.js';

/** Where the profile expects nothing, how far one board may lie from another, as a fraction. */
const boardsDiffer = 0.1;

export const twoBoards = (profile: Profile, measure: MeasureFunction, seed: number): Profile => {
  const lines: Record<string, Profile['lines'][string]> = {};
  for (const name of Object.keys(profile.lines)) {
    const patient = expecting(profile, name, measure, seed);
    lines[name] = patient;
    const { chain: _, mate, group, ...donor } = patient;
    lines[onDonor(name)] = {
      ...donor,
      ...(mate === undefined ? {} : { mate: onDonor(mate) }),
      ...(group === undefined ? {} : { group: onDonor(group) }),
    };
  }
  const pins = profile.connector.pins.flatMap((place) => [
    { ...place, pin: onDonor(place.pin), line: onDonor(place.line) },
    place,
  ]);
  return { ...profile, lines, connector: { ...profile.connector, pins } };
};

/** Is a place of such a bench on the other board than another place? */
export const isOtherBoard = ({ connector: { pins } }: Profile, one: number, two: number): boolean =>
  offBoard(pins[one]?.pin ?? '').board !== offBoard(pins[two]?.pin ?? '').board;

/** Two boards of a connector nobody has measured still read alike. */
const expecting = (
  profile: Profile,
  name: string,
  measure: MeasureFunction,
  seed: number,
): Profile['lines'][string] => {
  const line = profile.lines[name] as Profile['lines'][string];
  if (line.kind === 'ground' || line.expect?.[measure] !== undefined) return line;
  const nominal = healthyReading(profile, name, measure, seed);
  return nominal === null || nominal === 0
    ? line
    : { ...line, expect: { ...line.expect, [measure]: { nominal, tolerance: boardsDiffer } } };
};

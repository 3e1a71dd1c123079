// What each line of one particular good board reads: the profile's expected value with a board's own spread,
// or, where the profile expects nothing yet, a plausible figure by the kind of line. Null is no path.
import type { Profile } from '../core/profile/profile-format.js';
import type { MeasureFunction } from '../core/reading.js';
import { type Seeded, seeded } from './seeded.js';

/** Share of the tolerance by which a board differs as a whole group, and each line within it. */
const groupShare = 0.2;
const lineShare = 0.08;

/** Resistance of a sound ground path with its contact, and the junction voltage seen there. */
const groundReads: Readonly<Record<MeasureFunction, number>> = {
  resistance: 0.12,
  continuity: 0.12,
  diode: 0.0004,
  'dc-volts': 0,
};

/** Typical readings of lines nobody has measured yet, low to high. Common practice, no source. */
const typical = {
  signal: { resistance: [300, 30_000], diode: [0.42, 0.62] },
  supply: { resistance: [20, 2_000], diode: [0.2, 0.45] },
} as const;

/**
 * @returns ohm or volt by the function, or null where a good board has no path.
 * @throws RangeError for a line the profile does not have.
 */
export const healthyReading = (
  profile: Profile,
  lineName: string,
  measure: MeasureFunction,
  seed: number,
): number | null => {
  const line = Object.hasOwn(profile.lines, lineName) ? profile.lines[lineName] : undefined;
  if (line === undefined) throw new RangeError(`profile ${profile.id} has no line ${lineName}`);
  if (measure === 'dc-volts') return 0;
  if (line.kind === 'ground') return groundReads[measure];
  const kin = seeded(seed, `kin:${line.group ?? lineName}`);
  const own = seeded(seed, `line:${lineName}`);
  const asked = measure === 'continuity' ? 'resistance' : measure;
  const expected = line.expect?.[measure] ?? line.expect?.[asked];
  if (expected === 'overload') return null;
  if (expected !== undefined) {
    const shift = groupShare * within(kin) + lineShare * within(own);
    return expected.nominal * (1 + expected.tolerance * shift);
  }
  if (line.kind === 'unused') return null;
  const pair = seeded(seed, `pair:${[lineName, line.mate ?? lineName].sort()[0]}`);
  const [low, high] = typical[line.kind][asked];
  return low * (high / low) ** pair.fraction() * (1 + 0.01 * within(own));
};

/** A normal deviate kept inside two deviations, so that a good board stays good. */
const within = (random: Seeded): number => Math.max(-2, Math.min(2, random.normal()));

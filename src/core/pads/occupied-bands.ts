// What the lines of a profile may read, so that no pad is put there: the expected values with their tolerance and
// another meter's shift, the branches that are left when a line breaks behind them, and shorts.
import { planWalk } from '../profile/plan.js';
import type { Profile } from '../profile/profile-format.js';
import type { MeasureFunction, Polarity } from '../reading.js';

export interface Occupied {
  readonly low: number;
  readonly high: number;
  /** What reads there: a line, a branch, or a short. */
  readonly by: string;
}

/** Another meter may read every healthy value this much more or less. Common practice, no source. */
const shift = 0.08;
/** What is left of a broken line through a branch, about the branch's own value. Common practice, no source. */
const branchSpread = 0.1;
/** A poor contact with ground reads up to so many times the limit of a short. Common practice, no source. */
const shortReach = 3;

/** Bands in the function's unit, the one that ends lowest first. */
export const occupiedBands = (
  profile: Profile,
  measure: { readonly function: MeasureFunction; readonly polarity: Polarity },
): readonly Occupied[] => {
  const { pins } = planWalk(profile, measure);
  // One line may call a high value a short; a short itself reads next to nothing on every line.
  const short = Math.min(...pins.map(({ shortLimit }) => shortLimit));
  const bands: Occupied[] = [{ low: 0, high: shortReach * short, by: 'a short' }];
  const seen = new Set<string>();
  for (const { line, expected } of pins) {
    if (seen.has(line)) continue;
    seen.add(line);
    if (expected !== null && expected !== 'overload')
      bands.push({ low: expected.low * (1 - shift), high: expected.high * (1 + shift), by: line });
    if (measure.function !== profile.measure.function) continue;
    for (const stop of profile.lines[line]?.chain ?? [])
      if ('shunt' in stop && stop.shunt.reads !== undefined) {
        const { part, reads } = stop.shunt;
        bands.push({ low: reads * (1 - branchSpread), high: reads * (1 + branchSpread), by: part });
      }
  }
  return bands.sort((a, b) => a.high - b.high);
};

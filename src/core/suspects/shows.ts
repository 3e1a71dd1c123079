// What a meter shows for a sight: the probability of each class of reading, before the probe or the judging go
// wrong. Branches whose reading the profile gives are computed; the others are known by their kind only.
import { normalCdf } from '../numbers/normal-cdf.js';
import type { MeasureFunction } from '../reading.js';
import { isWhole, type Sight } from './sight.js';
import type { Branch, Route } from './suspect-model.js';

export const shownClasses = ['normal', 'low', 'high', 'short', 'open'] as const;
export type ShownClass = (typeof shownClasses)[number];
export type Shows = Readonly<Record<ShownClass, number>>;

const nothing: Shows = { normal: 0, low: 0, high: 0, short: 0, open: 0 };
const surely = (shown: ShownClass): Shows => ({ ...nothing, [shown]: 1 });

/** Relative standard deviation of what a branch alone reads. Common practice, no source. */
const branchSpread = 0.03;

export const showsOf = (route: Route, sight: Sight, measure: MeasureFunction): Shows => {
  const shows = unexpecting(route, sight, measure);
  if (route.expected === 'overload') {
    // Nothing to be seen is what a good board shows here, and any value is not.
    const { short, open } = shows;
    if (isWhole(sight) && (sight.load === 'none' || sight.load === 'high')) return surely('normal');
    return { ...nothing, short, normal: open, low: 1 - short - open };
  }
  if (!route.isGround) return shows;
  const { short, low, normal, ...above } = shows;
  return { ...nothing, ...above, normal: short + low + normal };
};

const unexpecting = (route: Route, sight: Sight, measure: MeasureFunction): Shows => {
  if (sight.load === 'short') return surely('short');
  if (sight.load === 'low') return surely('low');
  const seen = route.branches.filter(({ at }) => at > sight.left && at < sight.right);
  if (!isWhole(sight) && seen.length === 0) return surely('open');
  if (sight.load === 'high') return surely('high');
  return isWhole(sight) ? surely('normal') : branchesShow(route, seen, measure);
};

const branchesShow = (
  { expected, shortLimit }: Route,
  seen: readonly Branch[],
  measure: MeasureFunction,
): Shows => {
  const known = seen.flatMap(({ reads }) => (reads === null ? [] : [reads]));
  if (known.length === 0) return seen.map((branch) => kindShows(branch, measure)).reduce(lowest);
  const reads =
    measure === 'diode'
      ? Math.min(...known)
      : 1 / known.reduce((conductance, ohms) => conductance + 1 / ohms, 0);
  if (expected === null || expected === 'overload') return surely('normal');
  const below = (limit: number): number => normalCdf((limit / reads - 1) / branchSpread);
  const short = below(Math.min(shortLimit, expected.low));
  const low = below(expected.low) - short;
  const normal = below(expected.high) - below(expected.low);
  return { short, low, normal, high: 1 - below(expected.high), open: 0 };
};

/**
 * What a branch of a kind shows alone: a capacitor blocks once charged, a protection part or another
 * junction mostly blocks ohms and shows a drop of its own in the diode test. Common practice, no source.
 */
const kindShows = ({ kind }: Branch, measure: MeasureFunction): Shows => {
  if (kind === 'capacitor') return { ...nothing, open: 0.97, high: 0.03 };
  if (measure !== 'diode') return { ...nothing, open: 0.8, high: 0.15, normal: 0.05 };
  if (kind === 'resistor') return { ...nothing, open: 0.6, high: 0.3, normal: 0.1 };
  return { ...nothing, open: 0.2, high: 0.35, normal: 0.45 };
};

/** Of several branches the one that hides most tells what is seen. */
const lowest = (a: Shows, b: Shows): Shows => (b.open < a.open ? b : a);

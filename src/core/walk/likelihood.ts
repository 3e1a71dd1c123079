// How likely a captured value is at a pin, and how likely a gap is a slip or a lift: the evidence from which
// the walk knows where the probe is. Densities are over a coordinate that is linear near zero and logarithmic
// above, so that 0.2 Ω grounds and 50 kΩ lines are weighed alike. Figures: common practice, no source.

import type { PlannedPin } from '../profile/plan.js';
import type { MeasureFunction } from '../reading.js';
import type { Gap } from './contact.js';

/** Where the coordinate turns from linear to logarithmic, per unit. */
const knee: Readonly<Record<MeasureFunction, number>> = {
  resistance: 1,
  continuity: 1,
  diode: 0.02,
  'dc-volts': 0.02,
};
/** Width of all values that can be read, in the coordinate. */
const fullWidth = 18;
/** Share of lines that read something else than expected, and how many of those are shorted. */
const faultShare = 0.05;
const shortShare = 0.3;
/** Another meter's scale may shift every healthy value this much. */
const shiftAllowance = 0.08;

const coordinate = (value: number, at: number): number => Math.asinh(value / at);

/** d(coordinate)/d(value), to turn a density per unit into one per coordinate. */
const stretch = (value: number, at: number): number => Math.sqrt(value * value + at * at);

/** Density of a value at a pin that has not been read yet. `mate` is what its mate read, if known. */
export const firstTouchDensity = (
  pin: PlannedPin,
  value: number,
  measure: MeasureFunction,
  mate: number | null,
): number => {
  const at = knee[measure];
  const x = coordinate(Math.max(0, value), at);
  const { expected } = pin;
  if (expected === null) return 1 / fullWidth;
  const broad = faultDensity(x, coordinate(pin.shortLimit, at));
  if (expected === 'overload') return 0.5 * broad;
  const low = coordinate(expected.low * (1 - shiftAllowance), at);
  const high = coordinate(expected.high * (1 + shiftAllowance), at);
  const outside = x < low ? low - x : x > high ? x - high : 0;
  let healthy = Math.exp(-outside / edge) / (high - low + 2 * edge);
  if (mate !== null) healthy = 0.5 * healthy + 0.5 * laplace(value, mate, 0.012, measure);
  return (1 - faultShare) * healthy + faultShare * broad;
};

const edge = 0.03;

const faultDensity = (x: number, short: number): number =>
  (x <= short ? shortShare / short : 0) + (1 - shortShare) / fullWidth;

/** Density of a value at a pin that read `before`: the same contact, or the same line touched again. */
export const sameLineDensity = (before: number, value: number, measure: MeasureFunction): number =>
  laplace(value, before, 0.005, measure);

const laplace = (
  value: number,
  centre: number,
  relative: number,
  measure: MeasureFunction,
): number => {
  const at = knee[measure];
  const scale = relative * Math.abs(centre) + 0.12 * at;
  return (stretch(centre, at) * Math.exp(-Math.abs(value - centre) / scale)) / (2 * scale);
};

export interface GapLikelihood {
  readonly slip: number;
  readonly lift: number;
}

/**
 * Likelihood of the longest run of overload in a gap if it was a slip (50 to 400 ms) and if it was a lift
 * (0.5 s and more). The run is known only to lie between two bounds, and its ends fall anywhere within a
 * sampling period, so each duration is weighed by a triangle between the bounds.
 */
export const gapLikelihood = (gap: Gap): GapLikelihood => {
  if (gap.leftT === null || gap.openHi === Number.MAX_VALUE) return { slip: 0.3, lift: 0.3 };
  const lo = gap.openLo;
  const hi = Math.max(gap.openHi, lo + 1e-3);
  const steps = 24;
  const middle = (lo + hi) / 2;
  let slip = 0;
  let lift = 0;
  for (let i = 0; i < steps; i += 1) {
    const d = lo + ((i + 0.5) * (hi - lo)) / steps;
    const weight = (1 - Math.abs(d - middle) / ((hi - lo) / 2)) * 2;
    slip += (weight * slipDensity(d)) / steps;
    lift += (weight * liftDensity(d)) / steps;
  }
  return { slip: slip + 1e-7, lift: lift + 1e-5 };
};

/** Per second. */
const slipDensity = (d: number): number =>
  d <= 0.42 ? 0.97 / 0.42 : (0.03 / 0.12) * Math.exp(-(d - 0.42) / 0.12);

/** Per second: few lifts under half a second, most within a second or two, hunting for up to ten. */
const liftDensity = (d: number): number => {
  if (d < 0.25) return 0;
  if (d < 0.48) return 0.02 / 0.23;
  return (0.8 / 0.9) * Math.exp(-(d - 0.48) / 0.9) + (0.18 / 4) * Math.exp(-(d - 0.48) / 4);
};

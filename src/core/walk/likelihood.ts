// How likely a captured value is at a pin: the evidence from which the walk knows where the probe is. Densities
// are over a coordinate that is linear near zero and logarithmic above, so that 0.2 Ω grounds and 50 kΩ lines are
// weighed alike. Figures: common practice, no source.
import { type Belief, believedNominal } from '../context/shift-belief.js';
import type { PlannedPin } from '../profile/plan.js';
import type { MeasureFunction } from '../reading.js';

/** Where the coordinate turns from linear to logarithmic, per unit. */
const knee: Readonly<Record<MeasureFunction, number>> = {
  resistance: 1,
  continuity: 1,
  diode: 0.02,
  'dc-volts': 0.02,
};
/** Width of all values that can be read, in the coordinate. */
const fullWidth = 18;
/** Share of lines that read something else than expected. */
const faultShare = 0.05;
/** Of those: shorted, and within a factor of three of what is expected; the rest may read anything. */
const shortShare = 0.3;
const nearShare = 0.45;
const nearWidth = Math.log(3);
/** Healthy lines lie mostly well within their tolerance: this share of it is a standard deviation. */
const healthySpread = 0.35;
/** A few are farther off, by this many times that. */
const farShare = 0.05;
const farTimes = 2.5;

const coordinate = (value: number, at: number): number => Math.asinh(value / at);

/** d(coordinate)/d(value), to turn a density per unit into one per coordinate. */
const stretch = (value: number, at: number): number => Math.sqrt(value * value + at * at);

/** What a pin that has not been read yet is weighed against. */
export interface Expecting {
  readonly measure: MeasureFunction;
  /** What the pin's mate read just before, if it did. */
  readonly mate: number | null;
  /** What the pin before read, if it did: all there is to go by where nothing is expected. */
  readonly before?: number | null;
  /** How this meter reads lines of the pin's class. */
  readonly shift: Belief;
}

/** Density of a value at a pin that has not been read yet. */
export const firstTouchDensity = (pin: PlannedPin, value: number, known: Expecting): number => {
  const at = knee[known.measure];
  const { expected } = pin;
  const { mate, before = null, shift } = known;
  if (expected === null) {
    return besideMate(unknownDensity(value, [before], known.measure), value, mate, at);
  }
  const x = coordinate(Math.max(0, value), at);
  const short = coordinate(pin.shortLimit, at);
  if (expected === 'overload') return 0.5 * faultDensity(x, short, null);
  if (expected.low <= 0) {
    const high = coordinate(expected.high, at);
    const outside = Math.max(0, x - high);
    const healthy = Math.exp(-outside / edge) / (high + edge);
    return (1 - faultShare) * healthy + faultShare * faultDensity(x, short, null);
  }
  const tolerance = (expected.high - expected.low) / (2 * expected.nominal);
  const { nominal, relativeUncertainty } = believedNominal(expected.nominal, shift, known.measure);
  const deviation = Math.hypot(healthySpread * tolerance + 0.005, relativeUncertainty);
  const centre = coordinate(nominal, at);
  const alone =
    (1 - farShare) * normalDensity(x, centre, deviation) +
    farShare * normalDensity(x, centre, farTimes * deviation);
  const healthy = besideMate(alone, value, mate, at);
  return (1 - faultShare) * healthy + faultShare * faultDensity(x, short, centre);
};

/** Lines of a pair read almost alike. */
const besideMate = (alone: number, value: number, mate: number | null, at: number): number =>
  mate === null
    ? alone
    : 0.6 * alone + 0.4 * laplace(value, mate, 0.012 * Math.abs(mate) + 0.1 * at, at);

/** Lines beside one another on a connector are often of one kind. Common practice, no source. */
const alikeShare = 0.3;
const alikeSpread = 0.05;

/** Density of a value at a pin of which nothing is expected, by what pins that may be of its kind read. */
export const unknownDensity = (
  value: number,
  alike: readonly (number | null)[],
  measure: MeasureFunction,
): number => {
  const at = knee[measure];
  let density = 1 / fullWidth;
  for (const before of alike) {
    if (before === null) continue;
    const likeIt = laplace(value, before, alikeSpread * Math.abs(before) + 0.1 * at, at);
    density = (1 - alikeShare) * density + alikeShare * likeIt;
  }
  return density;
};

/** Probability that a pin shows nothing. */
export const openProbability = (pin: PlannedPin | undefined): number =>
  pin === undefined ? neverOpen : pin.expected === 'overload' ? 1 - faultShare : openShare;

/** Share of lines that are open though they should not be. */
const openShare = 0.03;
const neverOpen = 1e-6;

const edge = 0.03;

const faultDensity = (x: number, short: number, centre: number | null): number => {
  const shorted = x <= short ? shortShare / short : 0;
  if (centre === null) return shorted + (1 - shortShare) / fullWidth;
  const near = Math.abs(x - centre) <= nearWidth ? nearShare / (2 * nearWidth) : 0;
  return shorted + near + (1 - shortShare - nearShare) / fullWidth;
};

const normalDensity = (x: number, centre: number, deviation: number): number => {
  const z = (x - centre) / deviation;
  return Math.exp(-0.5 * z * z) / (deviation * Math.sqrt(2 * Math.PI));
};

/** Two captures of one line differ by this much beyond their own deviations: contact, drift, warmth. */
const sameSpread = 0.0012;
const sameContact = 0.03;

/**
 * Density of a value at a line that reads `before` already: the same contact, or the same line touched again.
 * `deviation` is the standard deviation of the difference from the two captures' own uncertainty.
 */
export const sameLineDensity = (
  before: number,
  value: number,
  deviation: number,
  measure: MeasureFunction,
): number => {
  const at = knee[measure];
  const own = Math.hypot(deviation, sameSpread * before, sameContact * at);
  const tail = laplace(value, before, own + 0.003 * Math.abs(before), at);
  return 0.97 * gaussian(value, before, own, at) + 0.03 * tail;
};

/** Two pins of one line differ by their joints and contacts. */
const pinSpread = 0.004;
const pinContact = 0.1;

/** Density of a value at the next pin of a line whose pin before reads `before`. */
const nextPinDensity = (before: number, value: number, measure: MeasureFunction): number => {
  const at = knee[measure];
  return laplace(value, before, pinSpread * Math.abs(before) + pinContact * at, at);
};

/** Share of pins that read otherwise than the pin before on the same line: one of the two joints is bad. */
const apartShare = 0.15;

/** The same where one of the two joints may be bad: then it reads as `alone` has it. */
export const nextOfLine = (
  before: number,
  value: number,
  alone: number,
  measure: MeasureFunction,
): number => (1 - apartShare) * nextPinDensity(before, value, measure) + apartShare * alone;

const gaussian = (value: number, centre: number, deviation: number, at: number): number => {
  const z = (value - centre) / deviation;
  return (stretch(value, at) * Math.exp(-0.5 * z * z)) / (deviation * Math.sqrt(2 * Math.PI));
};

const laplace = (value: number, centre: number, scale: number, at: number): number =>
  (stretch(value, at) * Math.exp(-Math.abs(value - centre) / scale)) / (2 * scale);

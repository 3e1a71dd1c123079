// How far a reading still has to go. A touched line creeps towards its level L as L + a·exp(-(t - t0)/τ):
// in-circuit capacitance charges through the meter. τ is unknown, so a grid of time constants is kept side
// by side, each a linear model in (L, a) with a closed-form posterior; the mixture over the grid answers
// "what is the level, and how much of the creep is left?". Costs a fixed amount of work per reading.
//
// Source of the algebra: conjugate Bayesian linear regression with unknown variance (normal, inverse gamma),
// flat prior on L, a ~ N(0, A²); any textbook of Bayesian data analysis, from memory.
import { normalCdf } from '../numbers/normal-cdf.js';

/** Seconds. The first ten cover a signal line's capacitance, the rest a supply rail's. Common practice, no source. */
const timeConstants = [
  0.02, 0.04, 0.07, 0.11, 0.16, 0.22, 0.3, 0.4, 0.52, 0.68, 0.95, 1.3, 1.75, 2.3, 3, 4, 5.5,
] as const;
const slowFrom = 10;
const width = timeConstants.length;

/** How many of the first readings can be taken out again: a landing bounces, or is averaged over. */
const mostDropped = 8;
/** Scatter this many times the expected noise is no longer noise. */
const misfit = 2.5;

/** Sums over the readings of one touch, relative to its first reading. */
export interface Creep {
  /** The first readings as they came, so that they can be taken out again. */
  readonly early: readonly { readonly t: number; readonly value: number }[];
  readonly n: number;
  readonly startT: number;
  readonly lastT: number;
  readonly first: number;
  readonly last: number;
  readonly sumV: number;
  readonly sumVV: number;
  /** Per time constant: Σe, Σe², Σve, and the last e, one after another. */
  readonly sums: Float64Array;
}

export interface CreepPrior {
  /** Standard deviation expected of one reading, in the reading's unit. */
  readonly noise: number;
  /** How many readings' worth of experience stands behind `noise`. */
  readonly noiseWeight: number;
  /** Probability before any reading that the line charges slowly, as a supply rail does. */
  readonly slow: number;
}

export interface CreepState {
  /** Where the reading is heading, in the reading's unit. */
  readonly level: number;
  /** Standard deviation of `level` from noise and unfinished creep. */
  readonly levelDeviation: number;
  /** Creep still to come, mean over the mixture: last fitted value minus level. */
  readonly remainder: number;
  /** Probability that what is left is within the given tolerance. */
  readonly settled: number;
  /** Probability that a slow time constant is at work and has further to go. */
  readonly charging: number;
  /** Standard deviation of one reading about the fitted creep. */
  readonly scatter: number;
  /** Sum of squared residuals of the best time constant, for learning the noise. */
  readonly residualSquares: number;
}

export const beginCreep = (t: number, value: number): Creep => {
  const sums = new Float64Array(4 * width);
  for (let j = 0; j < width; j += 1) {
    sums[j] = 1;
    sums[width + j] = 1;
    sums[3 * width + j] = 1;
  }
  return {
    early: [{ t, value }],
    n: 1,
    startT: t,
    lastT: t,
    first: value,
    last: value,
    sumV: 0,
    sumVV: 0,
    sums,
  };
};

export const addToCreep = (creep: Creep, t: number, value: number): Creep => {
  const v = value - creep.first;
  const elapsedS = t - creep.startT;
  const sums = creep.sums.slice();
  for (let j = 0; j < width; j += 1) {
    const e = Math.exp(-elapsedS / (timeConstants[j] as number));
    sums[j] = (sums[j] as number) + e;
    sums[width + j] = (sums[width + j] as number) + e * e;
    sums[2 * width + j] = (sums[2 * width + j] as number) + v * e;
    sums[3 * width + j] = e;
  }
  return {
    early: creep.early.length < mostDropped ? [...creep.early, { t, value }] : creep.early,
    n: creep.n + 1,
    startT: creep.startT,
    lastT: t,
    first: creep.first,
    last: value,
    sumV: creep.sumV + v,
    sumVV: creep.sumVV + v * v,
    sums,
  };
};

/**
 * The state of the creep after at least two readings. Where the readings scatter more than noise explains,
 * as many of the first ones as it takes are left out, if that mends it.
 * @param tolerance what may be left, in the reading's unit, for the touch to count as settled.
 * @throws RangeError with fewer than two readings: one reading cannot tell a level from a creep.
 */
export const assessCreep = (creep: Creep, prior: CreepPrior, tolerance: number): CreepState => {
  if (creep.n < 2) throw new RangeError('a creep needs at least two readings');
  const whole = assess(creep, prior, tolerance);
  const most = misfit * prior.noise;
  if (whole.scatter <= most) return whole;
  let rest = creep;
  let best = whole;
  for (const reading of creep.early) {
    if (rest.n <= leastLeft) break;
    rest = withoutReading(rest, reading.t, reading.value);
    const state = assess(rest, prior, tolerance);
    if (state.scatter <= most) return state;
    if (state.scatter < best.scatter) best = state;
  }
  return best.scatter < worthDropping * whole.scatter ? best : whole;
};

/** Leaving readings out must lower the scatter at least this much to be believed. */
const worthDropping = 0.6;

/** Readings that must remain when first ones are left out. */
const leastLeft = 3;

const withoutReading = (creep: Creep, t: number, value: number): Creep => {
  const v = value - creep.first;
  const elapsedS = t - creep.startT;
  const sums = creep.sums.slice();
  for (let j = 0; j < width; j += 1) {
    const e = Math.exp(-elapsedS / (timeConstants[j] as number));
    sums[j] = (sums[j] as number) - e;
    sums[width + j] = (sums[width + j] as number) - e * e;
    sums[2 * width + j] = (sums[2 * width + j] as number) - v * e;
  }
  return {
    ...creep,
    n: creep.n - 1,
    sumV: creep.sumV - v,
    sumVV: creep.sumVV - v * v,
    sums,
  };
};

const assess = (creep: Creep, prior: CreepPrior, tolerance: number): CreepState => {
  const { n, sums, sumV, sumVV } = creep;
  const size = Math.max(Math.abs(creep.last), prior.noise * 4);
  const noiseSquares = prior.noise * prior.noise;
  const dof = prior.noiseWeight + n - 1;

  let best = Number.NEGATIVE_INFINITY;
  for (let j = 0; j < width; j += 1) {
    const spread = j < slowFrom ? 0.35 * size : size;
    const kappa = noiseSquares / (spread * spread);
    const se = sums[j] as number;
    const see = (sums[width + j] as number) + kappa;
    const sve = sums[2 * width + j] as number;
    const det = n * see - se * se;
    const a = (n * sve - se * sumV) / det;
    const level = (see * sumV - se * sve) / det;
    const squares = Math.max(0, sumVV - level * sumV - a * sve);
    const weight = j < slowFrom ? (1 - prior.slow) / slowFrom : prior.slow / (width - slowFrom);
    const total = prior.noiseWeight * noiseSquares + squares;
    const evidence = Math.log(weight / spread) - 0.5 * Math.log(det) - 0.5 * dof * Math.log(total);
    const variance = total / dof;
    const e = sums[3 * width + j] as number;
    evidences[j] = evidence;
    levels[j] = level;
    levelVariances[j] = (variance * see) / det;
    remainders[j] = a * e;
    remainderDeviations[j] = Math.sqrt((variance * n) / det) * e;
    variances[j] = variance;
    squaresOf[j] = squares;
    if (evidence > best) best = evidence;
  }

  let mass = 0;
  for (let j = 0; j < width; j += 1) {
    const weight = Math.exp((evidences[j] as number) - best);
    evidences[j] = weight;
    mass += weight;
  }
  let settled = 0;
  let charging = 0;
  let remainder = 0;
  let level = 0;
  let scatter = 0;
  let heaviest = 0;
  for (let j = 0; j < width; j += 1) {
    const weight = (evidences[j] as number) / mass;
    const left = remainders[j] as number;
    const deviation = remainderDeviations[j] as number;
    const within =
      normalCdf((tolerance - left) / deviation) - normalCdf((-tolerance - left) / deviation);
    settled += weight * within;
    if (j >= slowFrom) charging += weight * (1 - within);
    remainder += weight * left;
    // A component whose creep is far from done knows its level badly: it may pull no further than the tolerance.
    level += weight * ((levels[j] as number) + left - clamp(left, tolerance));
    scatter += weight * (variances[j] as number);
    if ((evidences[j] as number) > (evidences[heaviest] as number)) heaviest = j;
  }
  return {
    level: creep.first + level,
    levelDeviation: Math.sqrt((levelVariances[heaviest] as number) + (remainder * remainder) / 3),
    remainder,
    settled,
    charging,
    scatter: Math.sqrt(scatter),
    residualSquares: squaresOf[heaviest] as number,
  };
};

const clamp = (left: number, limit: number): number => Math.max(-limit, Math.min(limit, left));

// Work space of one call, reused because this runs for every reading; nothing in it outlives the call.
const evidences = new Float64Array(width);
const levels = new Float64Array(width);
const levelVariances = new Float64Array(width);
const remainders = new Float64Array(width);
const remainderDeviations = new Float64Array(width);
const variances = new Float64Array(width);
const squaresOf = new Float64Array(width);

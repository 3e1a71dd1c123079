// The models of a creep, fitted. τ is unknown, and so is how many of the first readings were spoiled by the landing
// (the probe bounces, the meter means over the moment of contact). So every pair of a time constant and a first
// clean reading is a linear model in (L, a) with a closed-form posterior; one more says that nothing creeps.
//
// Source of the algebra: conjugate Bayesian linear regression with unknown variance (normal, inverse gamma),
// flat prior on L, a ~ N(0, A²); any textbook of Bayesian data analysis, from memory.
import { logGamma } from '../numbers/log-gamma.js';
import { type Creep, type Mark, place } from './creep.js';
import { baseOf } from './creep-base.js';
import { fastAmplitude, slowAmplitude, slowFrom, steadyShare, width } from './creep-grid.js';

export interface CreepPrior {
  /** Standard deviation expected of one reading, in the reading's unit. */
  readonly noise: number;
  /** How many readings' worth of experience stands behind `noise`. */
  readonly noiseWeight: number;
  /** Probability before any reading that the line charges slowly, as a supply rail does. */
  readonly slow: number;
}

/** Landing spoils readings for about this long, and the first one always may be. Common practice, no source. */
const landingS = 0.2;
/** Probability that the very first reading of a touch is clean; after it, spoiling dies away with `bounceS`. */
const firstClean = 0.3;
const bounceS = 0.035;
/** Spoiled readings lie anywhere within about this fraction of the reading. */
const spoiledWidth = 1;
/** No line creeps as one clean exponential: the model is off by this share of what it creeps. */
const discrepancy = 0.015;
const mostStarts = 4;
const models = width + 1;
/** Within the first second all slow time constants look much alike: every third of them will do. */
const coarseUntilS = 1;
const coarseStride = 3;

// Work space, reused because this runs for many readings.
const evidences = new Float64Array(mostStarts * models);
const levels = new Float64Array(mostStarts * models);
const levelVariances = new Float64Array(mostStarts * models);
const remainders = new Float64Array(mostStarts * models);
const remainderDeviations = new Float64Array(mostStarts * models);
const variances = new Float64Array(mostStarts * models);
const squaresOf = new Float64Array(mostStarts * models);
const readingsOf = new Float64Array(mostStarts * models);
let baseCount = 0;

/** Whether the model at a place has a time constant of a line that charges slowly. */
export const isSlow = (at: number): boolean => {
  const model = at % models;
  return model >= slowFrom && model < width;
};

/** The models, each at a place of every list. The lists are used again by the next fit. */
export interface Fitted {
  readonly count: number;
  /** The greatest evidence, natural logarithm. */
  readonly best: number;
  /** Natural logarithms. */
  readonly evidences: Float64Array;
  /** Above the first reading, in the reading's unit. */
  readonly levels: Float64Array;
  readonly levelVariances: Float64Array;
  /** Creep still to come. */
  readonly remainders: Float64Array;
  readonly remainderDeviations: Float64Array;
  /** Of one reading about the creep. */
  readonly variances: Float64Array;
  /** Sum of squared residuals, and how many readings were used. */
  readonly squaresOf: Float64Array;
  readonly readingsOf: Float64Array;
}

export const fitModels = (creep: Creep, prior: CreepPrior): Fitted => {
  const size = Math.max(Math.abs(creep.last), 4 * prior.noise);
  const base = baseOf(creep);
  let starts = 0;
  let best = Number.NEGATIVE_INFINITY;
  for (let at = base; at < creep.marks.length && starts < mostStarts; at += 1) {
    const mark = creep.marks[at] as Mark;
    if (at > base && at > 1 && mark.t - creep.startT > landingS) break;
    best = Math.max(
      best,
      fitOf(creep, creep.marks[at - 1], mark, prior, size, starts, at === base),
    );
    starts += 1;
  }
  return {
    count: starts * models,
    best,
    evidences,
    levels,
    levelVariances,
    remainders,
    remainderDeviations,
    variances,
    squaresOf,
    readingsOf,
  };
};

const logSteady = Math.log(steadyShare);

/** Fits every model that begins at a mark and returns the greatest of their evidences (natural logarithm). */
const fitOf = (
  { sums, startT, lastT, last }: Creep,
  before: Mark | undefined,
  mark: Mark,
  prior: CreepPrior,
  size: number,
  start: number,
  isBase: boolean,
): number => {
  const out = mark.sums;
  const n = (sums[place.n] as number) - (out[place.n] as number);
  const sumV = (sums[place.v] as number) - (out[place.v] as number);
  const sumVV = (sums[place.vv] as number) - (out[place.vv] as number);
  if (isBase) baseCount = n;
  const noiseSquares = prior.noise ** 2 + (discrepancy * (last - mark.value)) ** 2;
  const dof = prior.noiseWeight + n - 1;
  const common =
    logCleanFrom(startT, before, mark, isBase) +
    logGammaOfHalf(dof) -
    ((n - 1) / 2) * Math.log(Math.PI) -
    (baseCount - n) * Math.log(spoiledWidth * size);
  const known = prior.noiseWeight * noiseSquares;
  const stride = lastT - startT < coarseUntilS ? coarseStride : 1;
  const fastPrior = Math.log(((1 - steadyShare) * (1 - prior.slow)) / slowFrom);
  const slowPrior = Math.log(((1 - steadyShare) * prior.slow * stride) / (width - slowFrom));
  let greatest = Number.NEGATIVE_INFINITY;
  for (let j = 0; j < models; j += 1) {
    const at = start * models + j;
    const slow = j >= slowFrom && j < width;
    if (slow && (j - slowFrom) % stride !== 0) {
      evidences[at] = Number.NEGATIVE_INFINITY;
      continue;
    }
    let level: number;
    let squares: number;
    let logPrior: number;
    let det: number;
    let levelShare: number;
    if (j === width) {
      level = sumV / n;
      squares = Math.max(0, sumVV - level * sumV);
      logPrior = logSteady;
      det = n;
      levelShare = 1 / n;
      remainders[at] = 0;
    } else {
      const spread = (slow ? slowAmplitude : fastAmplitude) * size;
      const kappa = noiseSquares / (spread * spread);
      const se = (sums[place.e + j] as number) - (out[place.e + j] as number);
      const see = (sums[place.ee + j] as number) - (out[place.ee + j] as number) + kappa;
      const sve = (sums[place.ve + j] as number) - (out[place.ve + j] as number);
      const whole = n * see - se * se;
      const a = (n * sve - se * sumV) / whole;
      level = (see * sumV - se * sve) / whole;
      squares = Math.max(0, sumVV - level * sumV - a * sve);
      logPrior = slow ? slowPrior : fastPrior;
      det = whole / kappa;
      levelShare = see / whole;
      const e = sums[place.last + j] as number;
      remainders[at] = a * e;
      remainderDeviations[at] = e * Math.sqrt(n / whole);
    }
    const total = known + squares;
    const variance = total / dof;
    const evidence = common + logPrior - 0.5 * Math.log(det) - 0.5 * dof * Math.log(total);
    evidences[at] = evidence;
    levels[at] = level;
    levelVariances[at] = variance * levelShare;
    remainderDeviations[at] =
      j === width ? 0 : Math.sqrt(variance) * (remainderDeviations[at] as number);
    variances[at] = variance;
    squaresOf[at] = squares;
    readingsOf[at] = n;
    if (evidence > greatest) greatest = evidence;
  }
  return greatest;
};

/** Natural logarithm of the probability that the landing spoiled just the readings before this mark. */
const logCleanFrom = (
  startT: number,
  before: Mark | undefined,
  mark: Mark,
  isBase: boolean,
): number => {
  if (before === undefined) return Math.log(firstClean);
  const spoiledAfter = (t: number): number => (1 - firstClean) * Math.exp((startT - t) / bounceS);
  const spoiled = spoiledAfter(mark.t);
  return Math.log(Math.max(1e-9, isBase ? 1 - spoiled : spoiledAfter(before.t) - spoiled));
};

const logGammas: number[] = [];

/** ln Γ(k/2) for whole k, remembered. */
const logGammaOfHalf = (k: number): number => {
  const known = logGammas[k];
  if (known !== undefined) return known;
  const value = logGamma(k / 2);
  logGammas[k] = value;
  return value;
};

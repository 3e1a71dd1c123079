// How far a reading still has to go. A touched line creeps towards its level L as L + a·exp(-(t - t0)/τ):
// in-circuit capacitance charges through the meter. τ is unknown, and so is how many of the first readings were
// spoiled by the landing (the probe bounces, the meter means over the moment of contact). So every pair of a
// time constant and a first clean reading is a linear model in (L, a) with a closed-form posterior, and the
// mixture of them answers: what is the level, how much of the creep is left, and how far may that be wrong?
//
// Source of the algebra: conjugate Bayesian linear regression with unknown variance (normal, inverse gamma),
// flat prior on L, a ~ N(0, A²); any textbook of Bayesian data analysis, from memory.
import { logGamma } from '../numbers/log-gamma.js';
import { type Creep, type Mark, place } from './creep.js';
import { fastAmplitude, slowAmplitude, slowFrom, steadyShare, width } from './creep-grid.js';
import { quickNormal } from './quick-normal.js';

export interface CreepPrior {
  /** Standard deviation expected of one reading, in the reading's unit. */
  readonly noise: number;
  /** How many readings' worth of experience stands behind `noise`. */
  readonly noiseWeight: number;
  /** Probability before any reading that the line charges slowly, as a supply rail does. */
  readonly slow: number;
}

export interface CreepLimits {
  /** Creep that may be left, in the reading's unit. */
  readonly remainder: number;
  /** Error of the level that would be a wrong capture, in the reading's unit. */
  readonly error: number;
  /** Charging by less than this, in the reading's unit, means nothing: contact itself varies as much. */
  readonly slow: number;
}

export interface CreepState {
  /** Where the reading is heading, in the reading's unit. */
  readonly level: number;
  /** Standard deviation of `level`, over all models. */
  readonly levelDeviation: number;
  /** Creep still to come, mean over the mixture: last fitted value minus level. */
  readonly remainder: number;
  /** Probability that what is left is within the limit. */
  readonly settled: number;
  /** Probability that the level is off by more than the limit. */
  readonly astray: number;
  /** Probability that a slow time constant is at work and has further to go. */
  readonly charging: number;
  /** Standard deviation of one reading about the fitted creep. */
  readonly scatter: number;
  /** Sum of squared residuals of the likeliest model, for learning the noise, and how many readings it used. */
  readonly residualSquares: number;
  readonly used: number;
}

/** Landing spoils readings for about this long, and the first one always may be. Common practice, no source. */
const landingS = 0.2;
/** Probability that the very first reading of a touch is clean; after it, spoiling dies away with `bounceS`. */
const firstClean = 0.3;
const bounceS = 0.035;
/** Spoiled readings lie anywhere within about this fraction of the reading. */
const spoiledWidth = 1;
/** Only the late part of a touch tells what is still to come: from this share of its time on, once it is `enough`. */
const lateShare = 0.4;
const enough = 4;
/** No line creeps as one clean exponential: the model is off by this share of what it creeps. */
const discrepancy = 0.015;
const mostStarts = 4;
const models = width + 1;
/** Within the first second all slow time constants look much alike: every third of them will do. */
const coarseUntilS = 1;
const coarseStride = 3;

/** The state of the creep after at least two readings. @throws RangeError with fewer: one cannot show a creep. */
export const assessCreep = (creep: Creep, prior: CreepPrior, limits: CreepLimits): CreepState => {
  if (creep.n < 2) throw new RangeError('a creep needs at least two readings');
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
  return mix(creep, starts * models, best, limits);
};

/** The latest mark that leaves the late share of the touch, and enough readings, behind it. */
const baseOf = ({ marks, startT, lastT, n }: Creep): number => {
  const late = startT + lateShare * (lastT - startT);
  let at = 0;
  for (let next = 1; next < marks.length; next += 1) {
    const mark = marks[next] as Mark;
    if (mark.t > late || n - (mark.sums[place.n] as number) < enough) break;
    at = next;
  }
  return at;
};

/** Where the readings begin that tell what is still to come. */
export const baseMark = (creep: Creep): Mark => creep.marks[baseOf(creep)] as Mark;

// Work space of one call, reused because this runs for many readings; nothing in it outlives the call.
const evidences = new Float64Array(mostStarts * models);
const levels = new Float64Array(mostStarts * models);
const levelVariances = new Float64Array(mostStarts * models);
const remainders = new Float64Array(mostStarts * models);
const remainderDeviations = new Float64Array(mostStarts * models);
const variances = new Float64Array(mostStarts * models);
const squaresOf = new Float64Array(mostStarts * models);
const readingsOf = new Float64Array(mostStarts * models);
let baseCount = 0;

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

const mix = (creep: Creep, count: number, best: number, limits: CreepLimits): CreepState => {
  let mass = 0;
  let heaviest = 0;
  for (let i = 0; i < count; i += 1) {
    const weight = Math.exp((evidences[i] as number) - best);
    evidences[i] = weight;
    mass += weight;
    if (weight > (evidences[heaviest] as number)) heaviest = i;
  }
  let settled = 0;
  let charging = 0;
  let remainder = 0;
  let level = 0;
  let scatter = 0;
  const negligible = 1e-6 * mass;
  for (let i = 0; i < count; i += 1) {
    if ((evidences[i] as number) < negligible) continue;
    const weight = (evidences[i] as number) / mass;
    const left = remainders[i] as number;
    const deviation = remainderDeviations[i] as number;
    const model = i % models;
    const slow = model >= slowFrom && model < width;
    const limit = slow ? Math.max(limits.remainder, limits.slow) : limits.remainder;
    const within =
      deviation === 0
        ? 1
        : quickNormal((limit - left) / deviation) - quickNormal((-limit - left) / deviation);
    settled += weight * within;
    if (slow) charging += weight * (1 - within);
    remainder += weight * left;
    // A model whose creep is far from done knows its level badly: it may pull no further than the limit.
    level += weight * ((levels[i] as number) + left - clamp(left, limits.remainder));
    scatter += weight * (variances[i] as number);
  }
  let astray = 0;
  let variance = 0;
  for (let i = 0; i < count; i += 1) {
    if ((evidences[i] as number) < negligible) continue;
    const weight = (evidences[i] as number) / mass;
    const off = (levels[i] as number) - level;
    const own = levelVariances[i] as number;
    const deviation = Math.sqrt(own);
    const model = i % models;
    const slow = model >= slowFrom && model < width;
    const limit = slow ? Math.max(limits.error, 2 * limits.slow) : limits.error;
    astray +=
      weight *
      (1 - quickNormal((limit - off) / deviation) + quickNormal((-limit - off) / deviation));
    variance += weight * (own + off * off);
  }
  return {
    level: creep.first + level,
    levelDeviation: Math.sqrt(variance),
    remainder,
    settled,
    astray,
    charging,
    scatter: Math.sqrt(scatter),
    residualSquares: squaresOf[heaviest] as number,
    used: readingsOf[heaviest] as number,
  };
};

const clamp = (left: number, limit: number): number => Math.max(-limit, Math.min(limit, left));

const logGammas: number[] = [];

/** ln Γ(k/2) for whole k, remembered. */
const logGammaOfHalf = (k: number): number => {
  const known = logGammas[k];
  if (known !== undefined) return known;
  const value = logGamma(k / 2);
  logGammas[k] = value;
  return value;
};

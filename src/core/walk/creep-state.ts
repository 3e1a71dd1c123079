// How far a reading still has to go. A touched line creeps towards its level L as L + a·exp(-(t - t0)/τ):
// in-circuit capacitance charges through the meter. A mixture of fitted models answers: what is the level, how much
// of the creep is left, and how far may that be wrong?
import type { Creep } from './creep.js';
import { type CreepPrior, type Fitted, fitModels, isSlow } from './creep-models.js';
import { quickNormal } from './quick-normal.js';

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

/** The state of the creep after at least two readings. @throws RangeError with fewer: one cannot show a creep. */
export const assessCreep = (creep: Creep, prior: CreepPrior, limits: CreepLimits): CreepState => {
  if (creep.n < 2) throw new RangeError('a creep needs at least two readings');
  return mix(creep, fitModels(creep, prior), limits);
};

const mix = (creep: Creep, fitted: Fitted, limits: CreepLimits): CreepState => {
  const { count, best, evidences, levels, levelVariances, remainders, remainderDeviations } =
    fitted;
  const { variances, squaresOf, readingsOf } = fitted;
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
    const slow = isSlow(i);
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
    const slow = isSlow(i);
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

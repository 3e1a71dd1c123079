// Promises how often a bad item will be passed and a good one refused, over everything that is measured.
// Refuses a range of the population that is not finite and intervals the wrong way round.
import { integrate } from '../numbers/integrate.js';
import { conformityProbability, type Limits } from './conformity-probability.js';
import type { Spread } from './spread.js';

export interface RiskQuestion {
  /** Density of true values over the population, per unit of the value. */
  readonly density: (value: number) => number;
  /** Where the density may be cut off. */
  readonly from: number;
  readonly to: number;
  /** Within these an item is good. */
  readonly tolerance: Limits;
  /** Within these a reading is accepted. */
  readonly acceptance: Limits;
  /** How readings scatter about the true value. */
  readonly spread: Spread;
}

export interface ConformityRisks {
  /** Share of all items that are bad and accepted. */
  readonly consumer: number;
  /** Share of all items that are good and refused. */
  readonly producer: number;
}

/**
 * JCGM 106:2012, clause 9.5: the joint risks, integrals of the density times the probability to accept
 * outside the tolerance, and times the probability to refuse inside it.
 *
 * @throws RangeError on ends not finite or limits the wrong way round.
 */
export function conformityRisks(question: RiskQuestion): ConformityRisks {
  const { density, from, to, tolerance, acceptance, spread } = question;
  const within = (value: number): number => Math.min(to, Math.max(from, value));
  const low = within(tolerance.low ?? from);
  const high = within(tolerance.high ?? to);
  const accepts = (value: number): number => conformityProbability(value, spread, acceptance);
  const passed = (value: number): number => density(value) * accepts(value);
  const refused = (value: number): number => density(value) * (1 - accepts(value));
  return {
    consumer: integrate(passed, from, low) + integrate(passed, high, to),
    producer: integrate(refused, low, high),
  };
}

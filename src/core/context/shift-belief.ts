// Promises what may be believed of a class's shift from the first pin on, for telling pins apart: no limit is moved
// by it. Before anything is read it is as wide as meters and boards differ from a profile.
import { normalDensity } from '../numbers/normal-density.js';
import type { PlannedPin } from '../profile/plan.js';
import type { MeasureFunction } from '../reading.js';

export interface Belief {
  /** Natural logarithm of a factor; volts in diode test. */
  readonly departure: number;
  readonly standardUncertainty: number;
}

/** Meters and boards differ by about this from a profile's values. Common practice, no source. */
const usualSpread: Readonly<Record<MeasureFunction, number>> = {
  resistance: 0.04,
  continuity: 0.04,
  diode: 0.02,
  'dc-volts': 0.02,
};

const nothingSeen = (measure: MeasureFunction): Belief => ({
  departure: 0,
  standardUncertainty: usualSpread[measure],
});

/** An estimate weighed against what was believed beforehand: a normal mean with a normal prior about 0. */
export const believe = (seen: Belief | null, measure: MeasureFunction): Belief => {
  if (seen === null) return nothingSeen(measure);
  const evidence = 1 / seen.standardUncertainty ** 2;
  const precision = 1 / usualSpread[measure] ** 2 + evidence;
  return {
    departure: (evidence * seen.departure) / precision,
    standardUncertainty: 1 / Math.sqrt(precision),
  };
};

/** Before anything is read, a meter and a board differ from a profile's as often as not. Common practice, no source. */
const shiftedShare = 0.5;

/**
 * Probability that there is a shift at all: none, against one from a normal distribution about 0 with the usual
 * spread, by Bayes' rule (the factor of a point null against a normal alternative, as in any textbook, from memory).
 *
 * @example shiftProbability({ departure: 0, standardUncertainty: 0.015 }, 'resistance') // 0.26
 */
export const shiftProbability = (
  { departure, standardUncertainty }: Belief,
  measure: MeasureFunction,
): number => {
  const none = normalDensity(departure / standardUncertainty) / standardUncertainty;
  const wide = Math.hypot(standardUncertainty, usualSpread[measure]);
  const some = normalDensity(departure / wide) / wide;
  return (shiftedShare * some) / (shiftedShare * some + (1 - shiftedShare) * none);
};

export const beliefFor = (
  { kind, fromDonor }: PlannedPin,
  beliefs: Readonly<Record<'signal' | 'supply', Belief>>,
  measure: MeasureFunction,
): Belief => {
  if (fromDonor !== undefined) return noShift;
  return kind === 'signal' || kind === 'supply' ? beliefs[kind] : nothingSeen(measure);
};

/** What this meter read itself it reads again. */
export const noShift: Belief = { departure: 0, standardUncertainty: 0 };

/** What a nominal value should read, and the doubt in that as a fraction of it. */
export const believedNominal = (
  nominal: number,
  { departure, standardUncertainty }: Belief,
  measure: MeasureFunction,
): { readonly nominal: number; readonly relativeUncertainty: number } =>
  measure === 'diode' || measure === 'dc-volts'
    ? { nominal: nominal + departure, relativeUncertainty: standardUncertainty / nominal }
    : { nominal: nominal * Math.exp(departure), relativeUncertainty: standardUncertainty };

// Draws one invented meter for a walk, within its own accuracy.
import type { MeasureFunction } from '../../../src/core/reading.js';
import type { Random } from '../shared/random.js';
import { diodeScales, ohmScales, scaleFor } from './full-scales.js';
import type { MeterLaws } from './mixture.js';
import type { Meter, ToldAccuracy } from './walk-truth.js';

const drawRanging = (laws: MeterLaws, random: Random): Meter['ranging'] => {
  const { overload, blank, coarse } = laws.ranging;
  const u = random.unit();
  if (u < overload) return 'overload';
  if (u < overload + blank) return 'blank';
  return u < overload + blank + coarse ? 'coarse' : 'unseen';
};

export const drawMeter = (laws: MeterLaws, measure: MeasureFunction, random: Random): Meter => {
  const counts = random.pick(laws.counts);
  const rate = random.pick(laws.rates);
  const ranging = drawRanging(laws, random);
  return {
    rate,
    counts,
    fullScales: measure === 'diode' ? diodeScales(counts) : ohmScales(counts),
    overAt: measure === 'diode' ? 2.5 : null,
    means: random.chance(laws.meansConductance) ? 'conductance' : 'display',
    aperture: random.uniform(laws.aperture),
    noise: random.logUniform(laws.noise),
    gain: random.uniform([-laws.gain, laws.gain]),
    offsetCounts: random.uniform([-laws.offsetCounts, laws.offsetCounts]),
    drift: {
      amplitude: random.uniform(laws.drift),
      periodS: random.uniform(laws.driftPeriodS),
      phase: random.uniform([0, 2 * Math.PI]),
    },
    ranging,
    rangingS: random.uniform(ranging === 'coarse' ? laws.coarseRangingS : laws.rangingS),
    // A coarse reading that does not say so cannot be told from a good one by any program.
    tells: random.pick(
      ranging === 'coarse' ? ['resolution', 'range'] : ['nothing', 'resolution', 'range'],
    ),
    burst: rate >= 10 && random.chance(laws.bursts) ? random.whole([2, 5]) : 1,
  };
};

/** ±(0.5 % + 3 counts) holds for every meter drawn: gain and offset stay inside it. */
export const drawTold = (laws: MeterLaws, meter: Meter, random: Random): ToldAccuracy =>
  random.chance(laws.told) ? { percent: 0.5, counts: 3, fullScaleCounts: meter.counts } : null;

export const resolutionAt = (meter: Meter, value: number): number =>
  scaleFor(meter.fullScales, value) / meter.counts;

/** What the display would show of a true value, without noise and before rounding. */
export const seenBy = (meter: Meter, value: number): number =>
  Math.max(0, value * (1 + meter.gain) + meter.offsetCounts * resolutionAt(meter, value));

/** The true value behind what the display shows. */
export const behind = (meter: Meter, seen: number): number =>
  (seen - meter.offsetCounts * resolutionAt(meter, seen)) / (1 + meter.gain);

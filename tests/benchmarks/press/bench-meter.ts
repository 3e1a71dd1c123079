// A meter on one line: integrates over each period what the probe and the joint let it see, rounds to counts,
// adds noise. A period in which contact changed reads an odd value or an overload, as real ones do.
import type { Reading } from '../../../src/core/reading.js';
import type { Random } from '../shared/random.js';

export type Condition = 'contact' | 'open' | 'short';

/** From `t` on the line is in this condition; `value` where it shows one. */
export interface Change {
  readonly t: number;
  readonly condition: Condition;
  readonly value: number;
}

export interface BenchMeter {
  readonly updateS: number;
  readonly phaseS: number;
  readonly aperture: number;
  readonly noise: number;
  readonly resolution: number;
  readonly settleS: number;
}

export const drawMeter = (random: Random, rate: number, value: number): BenchMeter => ({
  updateS: 1 / rate,
  phaseS: random.unit() / rate,
  aperture: random.uniform([0.5, 0.98]),
  noise: random.logUniform([0.0003, 0.003]),
  resolution: 10 ** Math.floor(Math.log10(value / random.pick([400, 2000, 6000]))),
  settleS: random.logUniform([0.005, 0.1]),
});

/** What shows at `t`, creeping to the value after contact was made; null for open. */
const shownAt = (
  changes: readonly Change[],
  place: number,
  t: number,
  settleS: number,
): number | null => {
  const change = changes[place] as Change;
  if (change.condition === 'open') return null;
  const before = changes[place - 1];
  const from =
    before === undefined || before.condition === 'open' ? 1.3 * change.value : before.value;
  return change.value + (from - change.value) * Math.exp((change.t - t) / settleS);
};

const samples = 12;

/** Readings up to and including `endS`; `changes` in order, the first one at or before the start. */
export const readMeter = (
  meter: BenchMeter,
  changes: readonly Change[],
  fromS: number,
  endS: number,
  random: Random,
): Reading[] => {
  const readings: Reading[] = [];
  const widthS = meter.updateS * meter.aperture;
  let place = 0;
  let number = Math.ceil((fromS - meter.phaseS) / meter.updateS);
  for (;;) {
    const t = meter.phaseS + number * meter.updateS;
    number += 1;
    if (t > endS) return readings;
    if (t <= fromS) continue;
    let open = 0;
    let sum = 0;
    for (let i = 0; i < samples; i += 1) {
      const at = t - widthS + (widthS * (i + 0.5)) / samples;
      while ((changes[place + 1]?.t ?? Number.POSITIVE_INFINITY) <= at) place += 1;
      while (place > 0 && (changes[place] as Change).t > at) place -= 1;
      const shown = shownAt(changes, place, at, meter.settleS);
      if (shown === null) open += 1;
      else sum += shown;
    }
    const context = { t, function: 'resistance', resolution: meter.resolution } as const;
    if (open > 0.3 * samples) readings.push({ ...context, overload: true });
    else {
      const mixed = (sum / (samples - open)) * (1 + open / (samples - open) / 2);
      const noisy = mixed * (1 + meter.noise * random.normal());
      const value = Math.round(noisy / meter.resolution) * meter.resolution;
      readings.push({ ...context, value });
    }
  }
};

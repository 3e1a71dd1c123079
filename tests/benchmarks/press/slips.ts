// What the probe does on its own, whatever is pressed: it loses its pin, brushes another one, or both by turns.
// It never sees a cue.
import type { Random, Range } from '../shared/random.js';
import type { Condition } from './bench-meter.js';

/** From `from` to `to` the probe shows this instead of the line. */
export interface Slip {
  readonly from: number;
  readonly to: number;
  readonly condition: Condition;
  readonly value: number;
}

/** Slips that come at a rate, each for a while. */
export const drawSlips = (
  random: Random,
  endS: number,
  law: { perS: number; lastsS: Range; condition: Condition; value: number },
): Slip[] => {
  const slips: Slip[] = [];
  let t = random.exponential(1 / law.perS);
  while (t < endS) {
    const to = t + random.logUniform(law.lastsS);
    slips.push({ from: t, to, condition: law.condition, value: law.value });
    t = to + random.exponential(1 / law.perS);
  }
  return slips;
};

/** Contact and loss by turns; `spread` 1 is a memoryless telegraph, small is a rhythm. */
export const drawTurns = (
  random: Random,
  endS: number,
  law: { offS: number; onS: number; spread: number; condition: Condition; value: number },
): Slip[] => {
  const slips: Slip[] = [];
  const dwell = (mean: number): number =>
    law.spread === 1
      ? random.exponential(mean)
      : Math.max(0.05, mean * (1 + law.spread * random.normal()));
  let t = random.unit() * law.offS;
  while (t < endS) {
    const to = t + dwell(law.onS);
    slips.push({ from: t, to, condition: law.condition, value: law.value });
    t = to + dwell(law.offS);
  }
  return slips;
};

export const slipStyles = ['losses', 'touches', 'telegraph', 'rhythm'] as const;
export type SlipStyle = (typeof slipStyles)[number];

export interface SlippingLine {
  readonly rests: Condition;
  readonly slips: readonly Slip[];
}

/** A slipping probe on a sound or on an open line. Now and then it brushes a line of another value. */
export const drawSlipping = (
  random: Random,
  endS: number,
  value: number,
  style: SlipStyle = random.pick(slipStyles),
): SlippingLine => {
  const isOpen = style === 'touches' || (style !== 'losses' && random.chance(0.5));
  const touched = random.chance(0.7) ? value : value * random.logUniform([0.2, 5]);
  const shows = isOpen
    ? ({ condition: 'contact', value: touched } as const)
    : ({ condition: 'open', value } as const);
  const rests = isOpen ? 'open' : 'contact';
  if (style === 'losses' || style === 'touches') {
    const perS = random.logUniform([0.02, 1.5]);
    return { rests, slips: drawSlips(random, endS, { perS, lastsS: [0.05, 0.8], ...shows }) };
  }
  if (style === 'telegraph') {
    const law = { offS: random.logUniform([0.3, 6]), onS: random.logUniform([0.3, 6]), spread: 1 };
    return { rests, slips: drawTurns(random, endS, { ...law, ...shows }) };
  }
  const periodS = random.logUniform([2, 12]);
  const onS = periodS * random.uniform([0.3, 0.7]);
  const spread = random.logUniform([0.02, 0.5]);
  return {
    rests,
    slips: drawTurns(random, endS, { offS: periodS - onS, onS, spread, ...shows }),
  };
};

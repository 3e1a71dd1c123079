// What a mixture may vary: the laws from which boards, hands and meters of the benchmark are drawn. Data
// only; every share is a probability, every time is in seconds, every amplitude a fraction of the value.
import type { MeasureFunction } from '../../../src/core/reading.js';
import type { Range } from '../shared/random.js';

export interface BoardLaws {
  readonly function: MeasureFunction;
  readonly pins: Range;
  /** Pins from one ground to the next. */
  readonly groundEvery: Range;
  /** True value of a ground. */
  readonly ground: Range;
  /** Nominal of a signal, uniform in the logarithm. */
  readonly signal: Range;
  /** Share of blocks that are pairs; the rest are single lines. */
  readonly pairs: number;
  /** Share of pairs that read like the pair before them. */
  readonly pairsAlike: number;
  readonly supplies: number;
  /** Supplies that read a few units only, and the others. */
  readonly supplyLow: Range;
  readonly supplyHigh: Range;
  readonly supplyLowShare: number;
  readonly expectedOverload: number;
  readonly tolerances: readonly [number, ...number[]];
  readonly supplyTolerance: number;
  /** Written into every line of the profile; absent where the program's own 5 Ω rule shall hold. */
  readonly shortLimit?: number;
  readonly short: Range;
  readonly faults: {
    readonly open: number;
    readonly short: number;
    readonly leaky: number;
    readonly raised: number;
    readonly nearLimit: number;
    readonly onLimit: number;
  };
}

export interface CreepLaws {
  readonly tauS: Range;
  readonly amplitude: Range;
  readonly supplyTauS: Range;
  readonly supplyAmplitude: Range;
  /** Off contact, a line goes back to its start this many times slower than it crept. */
  readonly relaxes: Range;
  /** Lines with a second, slower creep: its share of lines, time constant and amplitude. */
  readonly tail: { readonly share: number; readonly tauS: Range; readonly amplitude: Range };
}

export interface HandLaws {
  readonly bounceShare: number;
  readonly bounces: Range;
  readonly bounceGapS: Range;
  readonly contact: Range;
  /** Extra resistance in the first moments of a touch, gone with a time constant of 30 ms. */
  readonly landingExtra: Range;
  readonly slips: number;
  readonly slipS: Range;
  /** Slips in which the probe rubs (some contact, at this multiple of the value) and does not come off. */
  readonly rubShare: number;
  readonly neighbours: number;
  readonly neighbourS: Range;
  readonly liftS: number;
  readonly liftMeanS: number;
  readonly hunts: number;
  readonly huntS: Range;
  /** How long a settled contact is held on, before the meter's own three readings are added. */
  readonly marginS: Range;
  readonly openAnswerS: Range;
  /** Share of bad pins after which the technician says `next` and does not touch again. */
  readonly saysNext: number;
}

export interface MeterLaws {
  readonly rates: readonly [number, ...number[]];
  readonly counts: readonly [number, ...number[]];
  /** Standard deviation of a reading as a fraction, uniform in the logarithm, one draw a walk. */
  readonly noise: Range;
  readonly noiseLaw: 'gaussian' | 'correlated' | 'heavy-tailed';
  readonly drift: Range;
  readonly driftPeriodS: Range;
  readonly aperture: Range;
  /** Share of meters that mean the conductance; the others mean what they would display. */
  readonly meansConductance: number;
  /** Share of walks in which each manner of ranging is seen; the rest range without a trace. */
  readonly ranging: { readonly overload: number; readonly blank: number; readonly coarse: number };
  readonly rangingS: Range;
  readonly coarseRangingS: Range;
  /** In walks with visible ranging, the share of holds in which one reading goes wrong. */
  readonly glitches: number;
  readonly gain: number;
  readonly offsetCounts: number;
  /** Share of walks over a link that hands over several readings at once. */
  readonly bursts: number;
  /** Share of walks in which the program is told accuracy and counts. */
  readonly told: number;
}

export interface Mixture {
  readonly name: string;
  readonly says: string;
  readonly board: BoardLaws;
  readonly creep: CreepLaws;
  readonly hand: HandLaws;
  readonly meter: MeterLaws;
}

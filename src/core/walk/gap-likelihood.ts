// How likely what was seen of a gap is if it was a slip (50 to 400 ms), and if it was a lift (0.5 s and more).
// The readings show the time only coarsely, so every duration they allow is weighed.
import { type Brush, type Gap, offShare } from './gap.js';
import { liftDensity, slipDensity } from './gap-times.js';
import type { RangingDelay } from './ranging.js';

export interface GapLikelihood {
  readonly slip: number;
  readonly lift: number;
}

export interface GapView {
  readonly gap: Gap;
  /** Time between readings, seconds. */
  readonly periodS: number;
  /** The first reading of the touch that ended the gap. */
  readonly landing: number | null;
  /** What is known of the meter's time to find its range. */
  readonly ranging: RangingDelay;
}

/** The part of a gap that came after the touch in it that was not captured. */
export const sinceBrush = (view: GapView, { value, offS }: Brush): GapView => ({
  ...view,
  gap: { ...view.gap, level: value, offS, departing: 0, brush: null },
});

/** Nobody watched: slip and lift are equally likely. */
const unwatched: GapLikelihood = { slip: 0.3, lift: 0.3 };
/** Beyond this no slip is thinkable, seconds. */
const surelyLiftS = 1.5;
const neverSlip = 1e-7;
const neverLift = 1e-5;
const steps = 24;
/** From range to range the delay differs by about this share of it. */
const rangeSpread = 0.15;
/** A delay less probable than this is left out of account. */
const negligible = 0.01;

export const gapLikelihood = (view: GapView): GapLikelihood => {
  const { level, offS } = view.gap;
  if (level === null || offS === null) return unwatched;
  const { probability, meanS } = view.ranging;
  const plain = weigh(view, level, offS, 0, 0);
  if (probability < negligible) return plain;
  const deviationS = Math.hypot(view.ranging.deviationS, rangeSpread * meanS);
  const delayed = weigh(view, level, offS, meanS, deviationS);
  return {
    slip: (1 - probability) * plain.slip + probability * delayed.slip,
    lift: (1 - probability) * plain.lift + probability * delayed.lift,
  };
};

/** The likelihoods if the meter needs so long to find its range, every time that it lost it. */
const weigh = (
  { gap, periodS, landing }: GapView,
  level: number,
  offS: number,
  delayS: number,
  deviationS: number,
): GapLikelihood => {
  if (offS - delayS > surelyLiftS + periodS) {
    return { slip: neverSlip, lift: liftDensity(offS - delayS) + neverLift };
  }
  const broken = gap.departing + (landing === null ? 0 : offShare(level, landing));
  const middle = offS + 0.6 * broken * periodS;
  const narrow = periodS * (0.3 + 0.25 * broken) + deviationS;
  let slip = 0;
  let lift = 0;
  for (const half of [narrow, 2 * narrow]) {
    for (let i = 0; i < steps; i += 1) {
      const x = (2 * (i + 0.5)) / steps - 1;
      const weight = (1 - Math.abs(x)) / steps;
      const seenS = Math.abs(middle + x * half);
      const offForS = seenS - delayS;
      slip += weight * (delayS === 0 ? slipDensity(seenS) : delayedSlip(seenS, offForS));
      lift += weight * liftDensity(offForS);
    }
  }
  if (gap.blankS > 0)
    lift = (1 - hiddenByBlank) * lift + (hiddenByBlank / steps) * liftBehind(middle, gap.blankS);
  return { slip: slip + neverSlip, lift: lift + neverLift };
};

/** Share of blank displays behind which the probe was off all the while. */
const hiddenByBlank = 0.3;

const liftBehind = (offS: number, blankS: number): number => {
  let sum = 0;
  for (let i = 0; i < steps; i += 1) sum += liftDensity(offS + ((i + 0.5) * blankS) / steps);
  return sum;
};

/** A short slip keeps the range and is seen as it is; a longer one is seen with the delay on top. */
const delayedSlip = (seenS: number, offForS: number): number =>
  slipDensity(seenS) * (1 - losesRange(seenS)) + slipDensity(offForS) * losesRange(offForS);

/** Probability that overload of this length makes the meter look for its range. Common practice, no source. */
const losesRange = (s: number): number => Math.max(0, Math.min(1, (s - 0.1) / 0.2));

// What one reading scatters by at this bench, learned from the captures of the walk itself, so that a
// 4,000-count meter at 2.5 readings/s and a 60,000-count one at 50/s need no tuning.

export interface Noise {
  /** Sum of squared relative residuals over all captures so far. */
  readonly squares: number;
  readonly degreesOfFreedom: number;
}

/** Before the first capture: 0.15 % of reading, worth two readings. Common practice, no source. */
const initialRelative = 0.0015;
const initialWeight = 2;
const mostWeight = 20;
/** Display steps below which a residual says more about rounding than about noise. */
const leastSteps = 200;

export const unknownNoise: Noise = { squares: 0, degreesOfFreedom: 0 };

/** Learns from one capture of `n` readings about a level. */
export const learnNoise = (
  noise: Noise,
  capture: { residualSquares: number; level: number; n: number; resolution: number },
): Noise => {
  const dof = capture.n - 2;
  if (dof < 1 || Math.abs(capture.level) < leastSteps * capture.resolution) return noise;
  return {
    squares: noise.squares + capture.residualSquares / (capture.level * capture.level),
    degreesOfFreedom: noise.degreesOfFreedom + dof,
  };
};

/** Standard deviation of one reading, in its own unit. */
export const noiseAt = (noise: Noise, value: number, resolution: number): number => {
  const relative =
    (initialWeight * initialRelative * initialRelative + noise.squares) /
    (initialWeight + noise.degreesOfFreedom);
  return Math.sqrt(relative * value * value + (resolution * resolution) / 12);
};

/** How many readings' worth of experience stands behind `noiseAt`. */
export const noiseWeight = (noise: Noise): number =>
  Math.min(mostWeight, initialWeight + noise.degreesOfFreedom);

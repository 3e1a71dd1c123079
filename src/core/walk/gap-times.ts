// How long slips and lifts last. Common practice, no source.

/** Probability density of a slip's length, per second: 50 to 400 ms, hardly ever longer. */
export const slipDensity = (s: number): number => {
  if (s < 0) return 0;
  return s <= 0.41 ? 0.98 / 0.41 : (0.02 / 0.05) * Math.exp(-(s - 0.41) / 0.05);
};

/**
 * Probability density of a lift's length, per second: few under half a second, most within a second or two,
 * hunting for up to ten. `softS` blurs its beginning where the length is known to within so much only.
 */
export const liftDensity = (s: number, softS = 0): number => {
  if (s < 0.48) {
    const hard = s < 0.35 ? 0 : 0.01 / 0.13;
    return softS === 0 ? hard : hard + 0.95 * Math.exp((s - 0.48) / softS);
  }
  return (0.81 / 0.9) * Math.exp(-(s - 0.48) / 0.9) + (0.18 / 4) * Math.exp(-(s - 0.48) / 4);
};

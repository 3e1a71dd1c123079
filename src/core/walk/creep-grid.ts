// What is believed of a line's creep before anything is read. Common practice, no source.

/** Seconds: a signal line's capacitance, then a supply rail's. */
export const timeConstants: readonly number[] = [
  0.02, 0.035, 0.06, 0.095, 0.15, 0.22, 0.32, 0.45, 0.62, 0.78, 0.93, 1.1, 1.3, 1.55, 1.85, 2.2,
  2.6, 3.1, 3.7, 4.4, 5.3,
];
export const width = timeConstants.length;
/** From this place on the time constants are those of slow charging. */
export const slowFrom = 9;
/** How far the level is from the first contact, as a fraction of it (standard deviation). */
export const fastAmplitude = 0.35;
export const slowAmplitude = 1;
/** Lines without any capacitance worth mentioning: grounds, shorts. */
export const steadyShare = 0.15;

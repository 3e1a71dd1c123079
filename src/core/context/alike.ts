// How near two lines must read to count as alike.

/** Two lines of a pair on a good board differ by no more than this fraction. Common practice, no source. */
export const alikeWithin = 0.03;

/** Coverage of a difference that may be no more than measuring. */
export const coverage = 2;

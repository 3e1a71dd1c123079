// The sequential design of the press test: when it looks, and what it asks for at each look. Its false-alarm
// rate is computed from these figures (see `false-alarm`), so they are kept in one place.

/** Fewer cycles cannot convince: three pairs give 1/20 at best, four give 1/70 (Fisher 1935). */
export const fewestCycles = 4;
export const mostCycles = 8;

/** A look may decide when Fisher's one-sided p-value is at or under this. */
export const decisiveP = 0.025;

/** How many cycles must have answered with both edges in their zones, after so many cycles. */
export const answersNeeded = (cycles: number): number => (cycles <= 5 ? 4 : 5);

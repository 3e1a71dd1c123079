// Chooses values as far apart as possible: the smallest distance, between any two and from what is occupied, is
// the largest it can be. Exact: for a given distance, taking the lowest value that fits again and again takes the
// most values, and the distance is found by halving.

export interface Choice {
  /** The reading it may give, in the function's unit. */
  readonly low: number;
  readonly high: number;
  /** Distance to the nearest occupied band: natural logarithm of the ratio, 0 or less inside one. */
  readonly clearance: number;
}

/** Natural logarithm of the ratio between the ends of two bands that face each other; negative when they overlap. */
export const apart = (
  a: { readonly low: number; readonly high: number },
  b: { readonly low: number; readonly high: number },
): number => {
  const between = Math.max(ratio(a.low, b.high), ratio(b.low, a.high));
  return Math.log(between);
};

const ratio = (low: number, high: number): number =>
  high > 0 ? Math.max(low, Number.MIN_VALUE) / high : Number.POSITIVE_INFINITY;

/**
 * The `count` choices with the largest smallest distance, rising; null when there are not so many at all that
 * neither overlap nor touch what is occupied.
 * @param choices in rising order of their bands.
 */
export const spreadValues = <C extends Choice>(
  choices: readonly C[],
  count: number,
): { readonly chosen: readonly C[]; readonly distance: number } | null => {
  const distances = distancesOf(choices).filter((distance) => distance > 0);
  const sorted = [...new Set(distances)].sort((a, b) => a - b);
  let [fits, fails] = [-1, sorted.length];
  while (fails - fits > 1) {
    const middle = Math.floor((fits + fails) / 2);
    if (take(choices, sorted[middle] as number).length >= count) fits = middle;
    else fails = middle;
  }
  const distance = sorted[fits];
  if (distance === undefined) return null;
  return { chosen: take(choices, distance).slice(0, count), distance };
};

/** Every distance that could be the smallest one of a choice. */
const distancesOf = (choices: readonly Choice[]): number[] => [
  ...choices.map(({ clearance }) => clearance),
  ...choices.flatMap((a, i) => choices.slice(i + 1).map((b) => apart(a, b))),
];

const take = <C extends Choice>(choices: readonly C[], distance: number): C[] => {
  const taken: C[] = [];
  for (const choice of choices) {
    if (choice.clearance < distance) continue;
    const last = taken.at(-1);
    if (last === undefined || apart(last, choice) >= distance) taken.push(choice);
  }
  return taken;
};

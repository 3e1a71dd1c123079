// The ways in which the captures so far may lie along the connector, each with its probability and its book of
// which capture belongs to which pin. A few at a time are enough.

/** What a pin still waits for. */
export type Stage = 'awaiting' | 'confirming' | 'done';

/** How a capture relates to its pin. */
export type Role = 'first' | 'repeat' | 'slip' | 'return' | 'answer';

/** One entry of the book, newest first. */
export interface Entry {
  readonly capture: number;
  readonly index: number;
  readonly role: Role;
  readonly before: Entry | null;
}

/** Two boards in turns: the technician was called back to the donor, and came. */
export interface Led {
  /** What the pin that was read last before the call had read. */
  readonly seen: { readonly index: number; readonly value: number } | null;
  /** Touches for which that counts. */
  readonly left: number;
}

export interface Way {
  /** Natural logarithm, relative to the best way. */
  readonly weight: number;
  readonly index: number;
  readonly stage: Stage;
  /** Probability that a normal value was none after all. */
  readonly doubt: number;
  /** What the pin at `index` read last, or null, and the standard deviation of that from its touch alone. */
  readonly value: number | null;
  readonly deviation: number;
  readonly led: Led | null;
  readonly book: Entry | null;
}

/** Likeliest first; never empty. */
export type Alignment = readonly Way[];

const mostWays = 16;
const leastWeight = Math.log(1e-8);

const awaiting = (index: number, book: Entry | null): Alignment => [
  { weight: 0, index, stage: 'awaiting', doubt: 0, value: null, deviation: 0, led: null, book },
];

export const startAt = (index: number): Alignment => awaiting(index, null);

/** Only the likeliest way goes on, from another place. */
export const placeAt = (alignment: Alignment, index: number): Alignment =>
  awaiting(index, alignment[0]?.book ?? null);

/** Every way takes the same step, as after an act of the technician, which is not in doubt. */
export const moveAll = (alignment: Alignment, move: (way: Way) => Way): Alignment =>
  alignment.map(move);

/** The probe has been elsewhere: whatever it touches next, it has not slipped there. */
export const elsewhere = (alignment: Alignment): Alignment =>
  moveAll(alignment, (way) => ({
    ...way,
    stage: way.stage === 'confirming' ? 'awaiting' : way.stage,
    value: null,
    deviation: 0,
    led: null,
  }));

/** How well each way fits what the technician said: a likelihood each, above zero. */
export const weighWays = (alignment: Alignment, likelihood: (way: Way) => number): Alignment =>
  keepBest(alignment.map((way) => ({ ...way, weight: way.weight + Math.log(likelihood(way)) })));

/** The heaviest of weighed things, likeliest first, weighed against the best of them. */
export const keepBest = <T extends { readonly weight: number }>(weighed: readonly T[]): T[] => {
  let best = Number.NEGATIVE_INFINITY;
  for (const { weight } of weighed) best = Math.max(best, weight);
  return weighed
    .filter(({ weight }) => weight - best > leastWeight)
    .sort((a, b) => b.weight - a.weight)
    .slice(0, mostWays)
    .map((one) => ({ ...one, weight: one.weight - best }));
};

/**
 * Ways that have come to the same place differ in their past only, and nothing that comes can tell them apart any
 * more: the likeliest past stands for all of them.
 */
export const mergeWays = (alignment: Alignment): Alignment => {
  const merged: Way[] = [];
  for (const way of alignment) {
    const at = merged.findIndex(
      ({ index, stage, value, led }) =>
        index === way.index &&
        stage === way.stage &&
        value === way.value &&
        led?.left === way.led?.left,
    );
    const twin = merged[at];
    if (twin === undefined) merged.push(way);
    else {
      const weight = twin.weight + Math.log1p(Math.exp(way.weight - twin.weight));
      merged[at] = { ...twin, weight };
    }
  }
  return merged.length === alignment.length ? alignment : keepBest(merged);
};

/** The pin a way waits for next; the number of pins when it has passed the last. */
export const waitsFor = (way: Way): number => (way.stage === 'done' ? way.index + 1 : way.index);

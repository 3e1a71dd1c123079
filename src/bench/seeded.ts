// Random numbers for the bench: the same seed and label give the same run on every machine. Refuses nothing,
// keeps no shared state; never used for anything but simulation.
//
// Generator: xorshift128 of G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8 (14), 2003.

export interface Seeded {
  /** Evenly spread over 0 (included) to 1 (excluded). */
  fraction(): number;
  /** Evenly spread from `low` to `high`. */
  between(low: number, high: number): number;
  /** True with the given probability. */
  chance(probability: number): boolean;
  /** A whole number from 0 to `count - 1`. */
  below(count: number): number;
  /** Normal with mean 0 and deviation 1. */
  normal(): number;
}

export type Word4 = readonly [number, number, number, number];

/** Marsaglia's xor128 as published, from four words of which one at least is not zero. */
export const xorshift128 = ([x0, y0, z0, w0]: Word4): (() => number) => {
  let [x, y, z, w] = [x0 >>> 0, y0 >>> 0, z0 >>> 0, w0 >>> 0];
  return () => {
    const t = (x ^ (x << 11)) >>> 0;
    x = y;
    y = z;
    z = w;
    w = (w ^ (w >>> 19) ^ (t ^ (t >>> 8))) >>> 0;
    return w;
  };
};

/**
 * @param seed any number; its 32 low bits count.
 * @param label which actor draws: two labels never share a sequence.
 */
export const seeded = (seed: number, label: string): Seeded => {
  const next = xorshift128(spread(seed, label));
  const fraction = () => next() / 2 ** 32;
  return {
    fraction,
    between: (low, high) => low + (high - low) * fraction(),
    chance: (probability) => fraction() < probability,
    below: (count) => Math.floor(fraction() * count),
    // Box and Muller (1958); one of the pair is thrown away, which keeps the sequence simple to follow.
    normal: () => Math.sqrt(-2 * Math.log(1 - fraction())) * Math.cos(2 * Math.PI * fraction()),
  };
};

/** Four well-mixed words, so that neighbouring seeds do not start alike. */
const spread = (seed: number, label: string): Word4 => {
  let h = mix((seed >>> 0) ^ 0x9e3779b9);
  for (const letter of label) h = mix((h ^ (letter.codePointAt(0) ?? 0)) >>> 0);
  const words = [1, 2, 3, 4].map((place) => mix((h + Math.imul(place, 0x9e3779b9)) >>> 0));
  const [a = 0, b = 0, c = 0, d = 0] = words;
  return [a, b, c, d | 1];
};

/** The 32-bit finaliser of MurmurHash3 (A. Appleby, public domain), from memory. */
const mix = (value: number): number => {
  let h = value >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b) >>> 0;
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35) >>> 0;
  return (h ^ (h >>> 16)) >>> 0;
};

// Seeded random numbers for benchmarks: the same seed and label give the same numbers on every machine.
// Refuses nothing clever: no shared state, so that drawing more in one place never shifts another place.

export type Range = readonly [low: number, high: number];

export interface Random {
  /** Uniform in [0, 1). */
  unit(): number;
  uniform(range: Range): number;
  /** Uniform in the logarithm; both ends must be positive. */
  logUniform(range: Range): number;
  /** Whole number from the range, both ends included. */
  whole(range: Range): number;
  exponential(mean: number): number;
  normal(): number;
  chance(probability: number): boolean;
  pick<T>(from: readonly [T, ...T[]]): T;
  /** An independent stream that depends only on this stream's seed and the label. */
  fork(label: string): Random;
}

/** FNV-1a, 32 bit. */
const hash = (text: string): number => {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return h >>> 0;
};

/** The 32-bit finaliser of MurmurHash3: spreads neighbouring seeds apart. */
const spread = (seed: number): number => {
  let h = seed >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
};

/** xoshiro128** by Blackman and Vigna (2018), state filled from the seed. */
const stream = (seed: number): (() => number) => {
  let a = spread(seed + 0x9e3779b9);
  let b = spread(a + 0x9e3779b9);
  let c = spread(b + 0x9e3779b9);
  let d = spread(c + 0x9e3779b9) | 1;
  const turn = (x: number, by: number): number => (x << by) | (x >>> (32 - by));
  return () => {
    const result = Math.imul(turn(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = turn(d, 11);
    return result;
  };
};

export const seeded = (seed: string): Random => {
  const next = stream(hash(seed));
  const unit = (): number => next() / 0x1_0000_0000;
  const uniform = ([low, high]: Range): number => low + (high - low) * unit();
  return {
    unit,
    uniform,
    logUniform: ([low, high]) => Math.exp(uniform([Math.log(low), Math.log(high)])),
    whole: ([low, high]) => low + Math.floor(unit() * (high - low + 1)),
    exponential: (mean) => -mean * Math.log(1 - unit()),
    normal: () => Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit()),
    chance: (probability) => unit() < probability,
    pick: (from) => from[Math.floor(unit() * from.length)] ?? from[0],
    fork: (label) => seeded(`${seed}/${label}`),
  };
};

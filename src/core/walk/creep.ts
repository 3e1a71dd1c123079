// The readings of one touch, as sums from which a creep L + a·exp(-(t - t0)/τ) can be fitted for a whole grid
// of time constants. Costs a fixed amount of work for each reading, however many there are.
import { timeConstants, width } from './creep-grid.js';

/** Where a fit may begin: the sums over everything before it, so that they can be taken out again. */
export interface Mark {
  readonly t: number;
  readonly value: number;
  readonly sums: readonly number[];
}

export interface Creep {
  readonly startT: number;
  readonly lastT: number;
  readonly n: number;
  readonly first: number;
  readonly last: number;
  readonly beforeLast: number;
  /** See `place`; values are relative to the first one. */
  readonly sums: readonly number[];
  readonly marks: readonly Mark[];
}

/** Where which sum stands, `e` being exp(-(t - t0)/τ): Σ1, Σv, Σv², then for each τ the last e, Σe, Σe², Σve. */
export const place = {
  n: 0,
  v: 1,
  vv: 2,
  last: 3,
  e: 3 + width,
  ee: 3 + 2 * width,
  ve: 3 + 3 * width,
  size: 3 + 4 * width,
} as const;

const nothing: readonly number[] = new Array<number>(place.size).fill(0);

export const beginCreep = (t: number, value: number): Creep => {
  const sums = nothing.slice();
  sums[place.n] = 1;
  for (let j = 0; j < width; j += 1) {
    sums[place.last + j] = 1;
    sums[place.e + j] = 1;
    sums[place.ee + j] = 1;
  }
  return {
    startT: t,
    lastT: t,
    n: 1,
    first: value,
    last: value,
    beforeLast: value,
    sums,
    marks: [{ t, value, sums: nothing }],
  };
};

export const addToCreep = (creep: Creep, t: number, value: number): Creep => {
  const v = value - creep.first;
  const elapsedS = t - creep.startT;
  const decay = decayOver(milliseconds(t) - milliseconds(creep.lastT));
  const sums = creep.sums.slice();
  sums[place.n] = creep.n + 1;
  sums[place.v] = (sums[place.v] as number) + v;
  sums[place.vv] = (sums[place.vv] as number) + v * v;
  for (let j = 0; j < width; j += 1) {
    const e = (sums[place.last + j] as number) * (decay[j] as number);
    sums[place.last + j] = e;
    sums[place.e + j] = (sums[place.e + j] as number) + e;
    sums[place.ee + j] = (sums[place.ee + j] as number) + e * e;
    sums[place.ve + j] = (sums[place.ve + j] as number) + v * e;
  }
  const { marks, startT } = creep;
  const markedS = (marks[marks.length - 1] as Mark).t - startT;
  return {
    startT,
    lastT: t,
    n: creep.n + 1,
    first: creep.first,
    last: value,
    beforeLast: creep.last,
    sums,
    marks:
      elapsedS - markedS >= Math.max(leastMarkS, markGrowth * markedS)
        ? [...marks, { t, value, sums: creep.sums }]
        : marks,
  };
};

/** Stamps finer than a millisecond mean nothing here: a probe takes longer to land. */
const milliseconds = (t: number): number => Math.round(t * 1000);

/** By how much every creep decays over so many milliseconds, for each time constant; the usual ones remembered. */
const decayOver = (ms: number): Float64Array => {
  const known = decays[ms];
  if (known !== undefined) return known;
  const decay = Float64Array.from(timeConstants, (tauS) => Math.exp(-ms / (1000 * tauS)));
  if (ms < rememberedMs) decays[ms] = decay;
  return decay;
};

const rememberedMs = 1000;
const decays: Float64Array[] = [];

/** Marks lie this far apart at first, and grow apart with the age of the touch. */
const leastMarkS = 0.035;
const markGrowth = 0.25;

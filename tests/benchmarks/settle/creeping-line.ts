// How a line behind a pin creeps under the meter's current: charging while touched, falling back while not.
// Plain sum of exponentials; times in seconds and never falling.
import type { Random } from '../shared/random.js';
import type { CreepLaws } from './mixture.js';
import type { PinTruth } from './walk-truth.js';

interface Creep {
  readonly amplitude: number;
  readonly tauS: number;
  readonly relaxS: number;
  /** What is left of it: 1 untouched, 0 settled. */
  left: number;
}

/** One exponential on top of a settled value: `amount · exp(-(t - start) / tauS)`. */
export interface Swing {
  readonly amount: number;
  readonly tauS: number;
}

export class CreepingLine {
  readonly #creeps: Creep[];
  #t = 0;
  #touched = false;

  constructor(creeps: readonly Omit<Creep, 'left'>[]) {
    this.#creeps = creeps.map((creep) => ({ ...creep, left: 1 }));
  }

  /** Moves on to `t`, from where the line is touched or not. */
  turn(t: number, touched: boolean): void {
    const passed = t - this.#t;
    for (const creep of this.#creeps)
      creep.left = this.#touched
        ? creep.left * Math.exp(-passed / creep.tauS)
        : 1 - (1 - creep.left) * Math.exp(-passed / creep.relaxS);
    this.#t = t;
    this.#touched = touched;
  }

  /** What is still to come, as a fraction of the settled value. */
  swings(): readonly Swing[] {
    return this.#creeps.map(({ amplitude, left, tauS }) => ({ amount: amplitude * left, tauS }));
  }
}

/** Seconds until the swings together stay under `threshold`, whatever their signs. */
export const settlesIn = (swings: readonly Swing[], threshold: number): number => {
  const after = (t: number): number =>
    swings.reduce((sum, { amount, tauS }) => sum + Math.abs(amount) * Math.exp(-t / tauS), 0);
  if (after(0) < threshold) return 0;
  let low = 0;
  let high = 0.01;
  while (after(high) >= threshold) high *= 2;
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (after(middle) < threshold) high = middle;
    else low = middle;
  }
  return high;
};

const steady = (): CreepingLine => new CreepingLine([]);

/** Grounds, shorts and pins that read overload do not creep. */
export const drawCreep = (laws: CreepLaws, pin: PinTruth, random: Random): CreepingLine => {
  if (pin.kind === 'ground' || pin.value === null || pin.condition === 'short') return steady();
  const supply = pin.kind === 'supply';
  const tauS = supply ? random.uniform(laws.supplyTauS) : random.logUniform(laws.tauS);
  const main = {
    amplitude: random.uniform(supply ? laws.supplyAmplitude : laws.amplitude),
    tauS,
    relaxS: tauS * random.uniform(laws.relaxes),
  };
  if (supply || !random.chance(laws.tail.share)) return new CreepingLine([main]);
  const slow = random.uniform(laws.tail.tauS);
  const tail = {
    amplitude: random.uniform(laws.tail.amplitude),
    tauS: slow,
    relaxS: slow * random.uniform(laws.relaxes),
  };
  return new CreepingLine([main, tail]);
};

// A hand that walks a connector with reply pads beside it, as the meter sees it: the touches it makes, each sampled
// at the meter's rate. It brushes pins while hunting for them, slips, holds a pin until it is read, touches a bad pin
// again, and now and then gives a command. How long each takes is common practice, no source.
import type { Pad, PadCommand } from '../../../src/core/pads/pad.js';
import type { PadTouch } from '../../../src/core/pads/pad-listener.js';
import { touchUncertainty } from '../../../src/core/pads/touch-uncertainty.js';
import type { Random } from '../shared/random.js';

/** What a pin reads: its settled ohms, and how it creeps there from the first contact. */
export interface PinReads {
  readonly ohms: number;
  readonly amplitude: number;
  readonly tauS: number;
  /** Not what the profile expects: the pin is touched again. */
  readonly isBad: boolean;
}

export type HandAct =
  | { readonly act: 'touch'; readonly touch: PadTouch }
  /** The probe has been in the air up to now. */
  | { readonly act: 'air'; readonly t: number }
  /** The walk captured the pin. */
  | { readonly act: 'captured'; readonly from: number; readonly value: number; readonly u: number }
  /** The hand is about to give a command on purpose. */
  | { readonly act: 'meant'; readonly command: PadCommand };

export interface HandHabits {
  readonly periodS: number;
  /** Share of pins before which the hand hunts, and of those hunts that pause before the pin is held. */
  readonly hunts: number;
  readonly pauses: number;
  readonly commands: number;
}

export const walkByHand = (
  pins: readonly PinReads[],
  pads: readonly Pad[],
  habits: HandHabits,
  random: Random,
): HandAct[] => {
  const acts: HandAct[] = [];
  let t = 0;
  const { periodS } = habits;
  const phase = random.uniform([0, periodS]);

  const air = (lastsS: number): void => {
    t += lastsS;
    acts.push({ act: 'air', t });
  };
  /** Runs of contact without a reading of overload between them are one touch to the meter. */
  const touch = (lastsS: number, reads: PinReads): void => {
    const readings: { t: number; value: number }[] = [];
    const start = t;
    t += lastsS;
    for (let k = Math.ceil((start - phase) / periodS); phase + k * periodS < t; k += 1) {
      const at = phase + k * periodS;
      const creep = 1 + reads.amplitude * Math.exp(-(at - start) / reads.tauS);
      readings.push({ t: at, value: shown(reads.ohms * creep * (1 + 0.0005 * random.normal())) });
    }
    const [first] = readings;
    const last = readings.at(-1);
    if (first === undefined || last === undefined) return;
    const before = acts.findLast(({ act }) => act === 'touch' || act === 'air');
    const sampledAir =
      Math.floor((start - phase) / periodS) > Math.floor((lastEnd - phase) / periodS);
    lastEnd = t;
    const values = readings.map(({ value }) => value).sort((a, b) => a - b);
    const value = values[Math.floor(values.length / 2)] as number;
    const made: PadTouch = {
      from: first.t,
      to: last.t,
      value,
      u: touchUncertainty(value, stepAt(value), 'resistance'),
    };
    if (!sampledAir && before !== undefined) {
      const at = acts.findLastIndex(({ act }) => act === 'touch');
      const earlier = acts[at];
      if (earlier?.act === 'touch') {
        acts.splice(at, acts.length - at, {
          act: 'touch',
          touch: { ...made, from: earlier.touch.from },
        });
        return;
      }
    }
    acts.push({ act: 'touch', touch: made });
  };
  let lastEnd = Number.NEGATIVE_INFINITY;

  const hunt = (reads: PinReads): void => {
    for (let brushes = random.whole([1, 3]); brushes > 0; brushes -= 1) {
      touch(Math.min(0.5, 0.03 + random.exponential(0.12)), reads);
      air(random.uniform([0.05, 0.5]));
    }
    if (random.chance(habits.pauses)) air(random.uniform([0.8, 10]));
  };
  const hold = (reads: PinReads): void => {
    const slips = random.chance(0.15);
    const from = t;
    touch(random.uniform(slips ? [0.2, 1.2] : [0.9, 2.5]), reads);
    if (slips) {
      air(random.uniform([0.05, 0.4]));
      touch(random.uniform([0.9, 2]), reads);
    }
    const value = shown(reads.ohms);
    acts.push({
      act: 'captured',
      from,
      value,
      u: touchUncertainty(value, stepAt(value), 'resistance'),
    });
  };
  // The technician is told to touch for more than two readings, and to lift for one.
  const tapS = [0.4 + periodS, 1 + 0.5 * periodS] as const;
  const liftS = [0.15 + periodS, 0.6 + periodS] as const;
  const command = (): void => {
    const pad = pads[random.whole([0, pads.length - 1])];
    if (pad === undefined) return;
    const reads = { ohms: pad.value, amplitude: 0, tauS: 1, isBad: false };
    air(random.uniform([0.7, 1.8]));
    acts.push({ act: 'meant', command: pad.command });
    touch(random.uniform(tapS), reads);
    air(random.uniform(liftS));
    touch(random.uniform(tapS), reads);
    air(random.uniform([0.7, 2]));
  };

  const commandsAt = new Set(
    Array.from({ length: habits.commands }, () => random.whole([0, pins.length - 1])),
  );
  pins.forEach((reads, index) => {
    air(random.uniform([0.7, 2]));
    const next = pins[index + 1];
    if (next !== undefined && random.chance(0.1)) {
      touch(random.uniform([0.05, 0.15]), next);
      air(random.uniform([0.1, 0.4]));
    }
    if (random.chance(habits.hunts)) hunt(reads);
    hold(reads);
    for (let again = reads.isBad ? random.whole([1, 2]) : 0; again > 0; again -= 1) {
      air(random.uniform([0.5, 1.5]));
      if (random.chance(habits.hunts)) hunt(reads);
      hold(reads);
    }
    if (commandsAt.has(index)) command();
  });
  air(5);
  return acts;
};

/** Six thousand counts, as a hand-held meter shows them. */
const stepAt = (ohms: number): number =>
  10 ** Math.max(-1, Math.ceil(Math.log10(Math.abs(ohms) / 6000)));
const shown = (ohms: number): number => Math.round(ohms / stepAt(ohms)) * stepAt(ohms);

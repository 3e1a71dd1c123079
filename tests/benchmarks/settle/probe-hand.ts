// Moves the probe: when it touches which pin, how it lands, slips, rubs and lifts, and what the technician
// says meanwhile. Knows the truth and follows the trade's rules: holds until settled and some more, touches a
// bad pin again (or says `next`), and answers an open one.
import type { Random } from '../shared/random.js';
import { type CreepingLine, drawCreep, type Swing, settlesIn } from './creeping-line.js';
import { resolutionAt, seenBy } from './draw-meter.js';
import type { Mixture } from './mixture.js';
import type { Contact, Meter, PinTruth } from './walk-truth.js';

const landingTauS = 0.03;
/** After this long without contact the meter is back on its highest range. */
export const forgetsRangeS = 0.2;

/** An unbroken stretch of contact, in the line's own value, before the meter. */
export interface Piece {
  readonly start: number;
  readonly end: number;
  /** Settled value, contact resistance included. */
  readonly base: number;
  readonly swings: readonly Swing[];
}

export interface Mark {
  readonly t: number;
  readonly act: 'open' | 'next';
}

export interface HandWork {
  readonly pieces: readonly Piece[];
  readonly contacts: readonly Contact[];
  readonly marks: readonly Mark[];
  readonly end: number;
}

export class ProbeHand {
  readonly #mixture: Mixture;
  readonly #meter: Meter;
  readonly #pins: readonly PinTruth[];
  readonly #lines: readonly CreepingLine[];
  readonly #random: Random;
  readonly #pieces: Piece[] = [];
  readonly #contacts: Contact[] = [];
  readonly #marks: Mark[] = [];
  #t = 0;

  constructor(mixture: Mixture, meter: Meter, pins: readonly PinTruth[], random: Random) {
    this.#mixture = mixture;
    this.#meter = meter;
    this.#pins = pins;
    this.#random = random;
    const creep = random.fork('creep');
    this.#lines = pins.map((pin) => drawCreep(mixture.creep, pin, creep));
  }

  walk(): HandWork {
    this.#t = this.#random.uniform([0.8, 3]);
    this.#pins.forEach((pin, index) => {
      this.#land(index);
      if (pin.ends === 'open') this.#waitAndSay(index);
      else this.#hold(index, pin.ends === 'next');
      if (pin.ends === 'two-touches') {
        this.#lift(0.5);
        this.#land(index);
        this.#hold(index, false);
      }
      this.#lift(this.#mixture.hand.liftMeanS);
    });
    return {
      pieces: this.#pieces,
      contacts: this.#contacts,
      marks: this.#marks,
      end: this.#t + 1,
    };
  }

  #lift(meanS: number): void {
    const { liftS, hunts, huntS } = this.#mixture.hand;
    this.#t += liftS + this.#random.exponential(meanS);
    if (this.#random.chance(hunts)) this.#t += this.#random.uniform(huntS);
  }

  /** Sometimes the next pin is touched first (on the last pin, the one before). */
  #land(index: number): void {
    const { neighbours, neighbourS } = this.#mixture.hand;
    if (!this.#random.chance(neighbours)) return;
    const other = index + 1 < this.#pins.length ? index + 1 : index - 1;
    const start = this.#t;
    const end = start + this.#random.uniform(neighbourS);
    const seen = this.#piece(
      other,
      start,
      end,
      this.#random.uniform(this.#mixture.hand.contact),
      0,
    );
    this.#contacts.push({
      index: other,
      touch: 'neighbour',
      start,
      end,
      settledAt: null,
      seen,
      slips: [],
    });
    this.#t = end + this.#random.uniform([0.01, 0.08]);
  }

  #waitAndSay(index: number): void {
    const start = this.#t;
    const t = start + this.#random.uniform(this.#mixture.hand.openAnswerS);
    this.#marks.push({ t, act: 'open' });
    this.#t = t + this.#random.uniform([0.2, 1]);
    const end = this.#t;
    this.#contacts.push({
      index,
      touch: 'hold',
      start,
      end,
      settledAt: null,
      seen: null,
      slips: [],
    });
  }

  #hold(index: number, saysNext: boolean): void {
    const { hand } = this.#mixture;
    const random = this.#random;
    const start = this.#t;
    const contact = random.uniform(hand.contact);
    const extra = random.logUniform(hand.landingExtra);
    const slips: [number, number][] = [];
    let from = this.#bounce(index, start, contact, extra);
    let settled = this.#settles(index, from, contact, extra, true);
    let end = settled + this.#margin();
    let slipsLeft = random.chance(hand.slips) ? (random.chance(0.12) ? 2 : 1) : 0;
    while (slipsLeft > 0) {
      slipsLeft -= 1;
      const off = random.uniform([from + 0.05, Math.max(from + 0.06, end - 0.3)]);
      const on = off + random.uniform(hand.slipS);
      this.#piece(index, from, off, contact, slips.length === 0 ? extra : 0);
      if (random.chance(hand.rubShare)) this.#rub(index, off, on, contact);
      slips.push([off, on]);
      from = on;
      // A slip before the reading could well be taken starts the wait anew, as it would at the bench.
      if (off < settled + Math.max(1.5, 5 / this.#meter.rate)) {
        const again = this.#settles(index, on, contact, 0, on - off >= forgetsRangeS);
        if (off < settled) settled = again;
        end = again + this.#margin();
      } else end = Math.max(end, on + random.uniform([0.3, 1.2]));
    }
    if (saysNext) {
      this.#marks.push({ t: end, act: 'next' });
      end += random.uniform([0.2, 0.8]);
    }
    const seen = this.#piece(index, from, end, contact, slips.length === 0 ? extra : 0);
    this.#contacts.push({ index, touch: 'hold', start, end, settledAt: settled, seen, slips });
    this.#t = end;
  }

  /** Loses and finds contact while landing; returns when it is made for good. */
  #bounce(index: number, start: number, contact: number, extra: number): number {
    const { bounceShare, bounces, bounceGapS } = this.#mixture.hand;
    let from = start;
    if (!this.#random.chance(bounceShare)) return from;
    for (let left = this.#random.whole(bounces); left > 0; left -= 1) {
      const off = from + this.#random.exponential(0.006);
      this.#piece(index, from, off, contact, extra);
      from = off + this.#random.uniform(bounceGapS);
    }
    return from;
  }

  /** A stretch in which the probe rubs: the contact alone reads a multiple of the line. */
  #rub(index: number, off: number, on: number, contact: number): void {
    const value = this.#pins[index]?.value ?? 0;
    const rubbed = contact + Math.max(5 * contact, value) * this.#random.logUniform([0.1, 30]);
    this.#piece(index, off, on, rubbed, 0);
  }

  #margin(): number {
    return this.#random.uniform(this.#mixture.hand.marginS) + 3 / this.#meter.rate;
  }

  /** When the reading has settled after contact at `from`, the meter's own ranging included. */
  #settles(index: number, from: number, contact: number, extra: number, ranges: boolean): number {
    const value = (this.#pins[index]?.value ?? 0) + contact;
    const line = this.#lines[index];
    line?.turn(from, true);
    const swings = (line?.swings() ?? []).map(({ amount, tauS }) => ({
      amount: amount * value,
      tauS,
    }));
    const threshold = Math.max(0.005 * value, resolutionAt(this.#meter, value) / 2);
    const settles = settlesIn([...swings, { amount: extra, tauS: landingTauS }], threshold);
    return (
      from +
      Math.max(settles, ranges && this.#meter.ranging !== 'unseen' ? this.#meter.rangingS : 0)
    );
  }

  /** Puts down one stretch of contact and returns what the meter shows there once settled. */
  #piece(index: number, start: number, end: number, contact: number, extra: number): number | null {
    const value = this.#pins[index]?.value ?? null;
    if (value === null) return null;
    const line = this.#lines[index];
    const base = value + contact;
    line?.turn(start, true);
    const swings = (line?.swings() ?? []).map(({ amount, tauS }) => ({
      amount: amount * value,
      tauS,
    }));
    if (extra > 0) swings.push({ amount: extra, tauS: landingTauS });
    line?.turn(end, false);
    this.#pieces.push({ start, end, base, swings });
    return seenBy(this.#meter, base);
  }
}

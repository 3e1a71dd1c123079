// A run of contact that has not been captured yet. Tells a reading that belongs to the same creep from one that
// does not: a glitch of the display, a rub of the probe, another pin.
import { decadeStep } from '../measure/decade-step.js';
import { addToCreep, beginCreep, type Creep } from './creep.js';

/** How the meter showed a reading; ranges are never mixed in one judgement, for the test current differs. */
export interface Display {
  readonly range?: number | undefined;
  readonly resolution?: number | undefined;
}

/** How a reading is compared with others: its scatter and the smallest difference that means anything. */
export interface Scale {
  readonly noise: number;
  readonly floor: number;
}

export interface Odd {
  readonly t: number;
  readonly value: number;
}

export interface Touch {
  /** When contact began; the readings that count may begin later. */
  readonly since: number;
  readonly creep: Creep;
  readonly display: Display;
  /** How often the readings began anew elsewhere since contact: a reading that will not hold still. */
  readonly restarts: number;
  /** How often the display went over to another range since contact. */
  readonly changes: number;
  /** One reading that did not fit the others, set aside until the next tells whether it was a glitch. */
  readonly odd: Odd | null;
  /** The reading jumped here from something steady, and the probe was not seen to leave it. */
  readonly jumped: boolean;
  /**
   * The coarsest decade step of which every reading is a multiple: a coarse range shows here. Zero where the meter
   * tells its resolution.
   */
  readonly step: number;
}

/** Falling to less than this share at once is no creep: the reading before was no contact yet. */
const leastFall = 0.4;
const readingsOfLanding = 3;
/** A range that comes and goes this often lies at a boundary: its readings are then taken together. */
const mostChanges = 2;
/** So long on one thing, and leaving it is worth a doubt. */
const steadyS = 0.15;

export const beginTouch = (t: number, value: number, display: Display, jumped: boolean): Touch => ({
  since: t,
  creep: beginCreep(t, value),
  display,
  restarts: 0,
  changes: 0,
  odd: null,
  jumped,
  step: display.resolution === undefined ? decadeStep(value) : 0,
});

/** The touch with one more reading. */
export const extendTouch = (
  touch: Touch,
  t: number,
  value: number,
  display: Display,
  scale: Scale,
): Touch => {
  const { creep, odd } = touch;
  const changed =
    display.range !== touch.display.range || display.resolution !== touch.display.resolution;
  if (changed && touch.changes < mostChanges) {
    return { ...again(touch, t, value, display), changes: touch.changes + 1 };
  }
  if (creep.n < readingsOfLanding) {
    const fell = value < leastFall * creep.last && creep.last - value > scale.floor;
    return fell ? again(touch, t, value, display) : grown(touch, t, value);
  }
  if (fits(creep, value, scale)) {
    if (odd === null || isFlat(creep, scale)) return grown(touch, t, value);
    // The odd reading may have been a slip, and a line that was still creeping then creeps anew.
    return again(touch, t, value, display);
  }
  if (odd === null) return { ...touch, odd: { t, value } };
  const restless = { ...touch, restarts: touch.restarts + 1 };
  return Math.abs(odd.value - value) > sameRun * Math.abs(value)
    ? again(restless, t, value, display)
    : grown(again(restless, odd.t, odd.value, display), t, value);
};

/** Two readings this near (fraction) may belong to one run. */
const sameRun = 0.25;

const grown = (touch: Touch, t: number, value: number): Touch => ({
  since: touch.since,
  creep: addToCreep(touch.creep, t, value),
  display: touch.display,
  restarts: touch.restarts,
  changes: touch.changes,
  odd: null,
  jumped: touch.jumped,
  step: touch.step === 0 ? 0 : Math.min(touch.step, decadeStep(value)),
});

/** The contact goes on, but its readings count from here only. */
const again = (touch: Touch, t: number, value: number, display: Display): Touch => {
  const { creep, since, changes, restarts } = touch;
  // A rub reads more than the line; a landing or a range change comes down to it.
  const rose = creep.lastT - since >= steadyS && value > risenBy * creep.last;
  return {
    ...beginTouch(t, value, display, touch.jumped || rose),
    since,
    changes,
    restarts,
  };
};

const risenBy = 1.05;

/** A creep goes one way with steps that shrink; any other step must be small. */
const fits = ({ last, beforeLast }: Creep, value: number, { noise, floor }: Scale): boolean => {
  const step = value - last;
  const before = last - beforeLast;
  const size = Math.abs(step);
  if (size <= Math.max(0.03 * Math.abs(last), 6 * noise, floor / 3)) return true;
  return step * before > 0 && size <= 1.2 * Math.abs(before) + 3 * noise;
};

const isFlat = ({ last, beforeLast }: Creep, { noise, floor }: Scale): boolean =>
  Math.abs(last - beforeLast) <= Math.max(0.01 * Math.abs(last), 3 * noise, floor / 3);

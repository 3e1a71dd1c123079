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
  /** How often the display went over to another range since contact. */
  readonly changes: number;
  /** One reading that did not fit the others, set aside until the next tells whether it was a glitch. */
  readonly odd: Odd | null;
  /** The reading jumped here from something steady, and the probe was not seen to leave it. */
  readonly jumped: boolean;
  /** The coarsest decade step of which every reading is a multiple: a coarse range shows here. */
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
  changes: 0,
  odd: null,
  jumped,
  step: decadeStep(value),
});

/** The touch with one more reading. */
export const extendTouch = (
  touch: Touch,
  t: number,
  value: number,
  display: Display,
  scale: Scale,
): Touch => {
  if (display.range !== touch.display.range || display.resolution !== touch.display.resolution) {
    if (touch.changes < mostChanges) {
      return { ...again(touch, t, value, display, touch.jumped), changes: touch.changes + 1 };
    }
  }
  const { creep, odd } = touch;
  if (creep.n < readingsOfLanding) {
    if (value < leastFall * creep.last && creep.last - value > scale.floor) {
      return again(touch, t, value, display, touch.jumped);
    }
    return grown(touch, t, value);
  }
  if (odd === null)
    return fits(creep, value, scale) ? grown(touch, t, value) : { ...touch, odd: { t, value } };
  if (fits(creep, value, scale)) return grown(touch, t, value);
  const jumped = touch.jumped || creep.lastT - creep.startT >= steadyS;
  const begun = again(touch, odd.t, odd.value, display, jumped);
  return Math.abs(odd.value - value) <= sameRun * Math.abs(value)
    ? grown(begun, t, value)
    : again(touch, t, value, display, jumped);
};

const again = (
  touch: Touch,
  t: number,
  value: number,
  display: Display,
  jumped: boolean,
): Touch => ({
  ...beginTouch(t, value, display, jumped),
  since: touch.since,
  changes: touch.changes,
});

/** Two readings this near (fraction) may belong to one run. */
const sameRun = 0.25;

const grown = (touch: Touch, t: number, value: number): Touch => ({
  ...touch,
  creep: addToCreep(touch.creep, t, value),
  odd: null,
  step: Math.min(touch.step, decadeStep(value)),
});

/** A creep goes one way with steps that shrink; any other step must be small. */
const fits = ({ last, beforeLast }: Creep, value: number, { noise, floor }: Scale): boolean => {
  const step = value - last;
  const before = last - beforeLast;
  const size = Math.abs(step);
  if (size <= Math.max(0.03 * Math.abs(last), 6 * noise, floor / 3)) return true;
  return step * before > 0 && size <= 1.2 * Math.abs(before) + 3 * noise;
};

// How two boards walked in turns are aligned. Nothing may be expected of a donor's pin; what it reads is expected of the
// patient's pin right after it. One reading far from the donor's can be a fault, a board passed over or a board touched
// twice, so that it is not believed at once: the walk calls back to a pin that is known, and both are touched again.
// Readings that were told before are read again there, which nothing but the same pin does by chance.
import { noShift } from '../context/shift-belief.js';
import { walksDonor } from '../profile/donor.js';
import { expectsLittle, type Plan, type PlannedPin } from '../profile/plan.js';
import type { MeasureFunction } from '../reading.js';
import type { CaptureEvidence } from './align.js';
import type { GapView } from './gap-likelihood.js';
import { firstTouchDensity, nextOfLine, sameLineDensity, unknownDensity } from './likelihood.js';
import type { Led, Role, Way } from './ways.js';

/** The place that the technician was called back to, and what it is known to read. */
export interface CalledBack {
  readonly index: number;
  readonly value: number | null;
  /** Touches after which it was not as if a call had been followed, since one was. */
  readonly unfollowed: number;
}

/** Two boards are mixed up more easily than two pins. Common practice, no source. */
const unled = { again: 0.001, next: 0.99, ahead: 0.002 } as const;
/** Who was called back, and came, hears where to go, for so many touches (design decision). */
const whenLed = { again: 0.0001, next: 0.999, ahead: 0.0001 } as const;
const ledFor = 4;
/** What was answered to show nothing is hardly touched again: this times `again`. */
export const answeredAgain = 0.03;
/** Share of calls that are followed; after some that were not, nobody seems to listen. */
const followed = [0.98, 0.7, 0.2, 0.05] as const;

export const comesBack = ({ unfollowed }: CalledBack): number =>
  followed[Math.min(unfollowed, followed.length - 1)] ?? 0;

/** Where values are expected, they tell the boards apart, and a board is passed over less easily than a pin. */
const passedBoard = 0.3;

export interface Habit {
  readonly again: number;
  readonly next: number;
  readonly ahead: number;
}

/** `usual`: what follows in a walk of one board. */
export const habitInTurns = (way: Way, plan: Plan, usual: Habit): Habit => {
  if (way.led !== null) return whenLed;
  if (isUnknownInTurns(plan)) return unled;
  return { ...usual, ahead: passedBoard * usual.ahead };
};

/** Are two boards walked in turns of which little is expected? */
export const isUnknownInTurns = (plan: Plan): boolean =>
  walksDonor(plan) && expectsLittle({ pins: plan.pins.filter(({ board }) => board === 'donor') });

export const ledAfter = (role: Role, way: Way, called: CalledBack | null): Led | null => {
  if (role === 'slip') return way.led;
  if (role === 'return' && called !== null) {
    const { index, value } = way;
    return { seen: value === null ? null : { index, value }, left: ledFor };
  }
  return way.led === null || way.led.left <= 1 ? null : { ...way.led, left: way.led.left - 1 };
};

/** What a pin read before the call back, where it was the one that the call came after. */
export const seenBefore = ({ led }: Way, { index }: PlannedPin): number | null =>
  led?.seen?.index === index ? led.seen.value : null;

/** From one board to the other no hand gets faster than this, seconds, but for a few. Common practice, no source. */
const quickestOverS = 0.6;
const hastyShare = 0.05;

export const goesOver = ({ gap: { offS }, periodS }: GapView): number =>
  offS === null || offS + periodS >= quickestOverS ? 1 : hastyShare;

/** A line touched again much later has crept or warmed by about so much (fraction). Common practice, no source. */
const readsAgainWithin = 0.004;
/** Share of pins that read otherwise when they are touched again much later. */
const otherwise = 0.002;

/** Density of a value at the place that the technician was called back to; `fresh`: as if it had not been read. */
export const returnDensity = (
  { called, value, deviation }: CaptureEvidence,
  fresh: number,
  measure: MeasureFunction,
): number => {
  if (called === null || called.value === null) return fresh;
  const same = readAgain(called.value, value, deviation, measure);
  return (1 - otherwise) * same + otherwise * fresh;
};

const readAgain = (
  before: number,
  value: number,
  deviation: number,
  measure: MeasureFunction,
): number =>
  sameLineDensity(before, value, Math.hypot(deviation, readsAgainWithin * before), measure);

/** Density of a value at a pin that is come to from the place where a way stands; `alone`: whatever was read before. */
export const inTurnsDensity = (
  way: Way,
  pin: PlannedPin,
  plan: Plan,
  { value, deviation, read }: CaptureEvidence,
  alone: number,
): number => {
  const { function: measure } = plan;
  const fresh = freshDensity(way, pin, plan, value, alone, read);
  const before = read(pin.index) ?? seenBefore(way, pin);
  return before === null ? fresh : (fresh + readAgain(before, value, deviation, measure)) / 2;
};

const freshDensity = (
  way: Way,
  pin: PlannedPin,
  plan: Plan,
  value: number,
  alone: number,
  read: CaptureEvidence['read'],
): number => {
  const { function: measure } = plan;
  const last = plan.pins[way.index];
  if (last !== undefined && way.value !== null && way.index === pin.index - 1) {
    // Both read the same leads.
    if (last.kind === 'ground' && pin.kind === 'ground') {
      return nextOfLine(way.value, value, alone, measure);
    }
    if (last.board === 'donor') {
      const beside = besideDensity(pin, way.value, value, measure);
      // A donor that is not normal itself tells less than the profile.
      return pin.expected === null || pin.fromDonor !== undefined ? beside : (beside + alone) / 2;
    }
  }
  return pin.board === 'donor' && pin.expected === null
    ? unknownDensity(value, [read(pin.index - 2), read(mateOf(pin, plan))], measure)
    : alone;
};

const mateOf = ({ mate }: PlannedPin, { pins }: Plan): number =>
  mate === undefined ? -1 : pins.findIndex(({ line }) => line === mate);

/** How far good boards lie from one another, as a tolerance. Common practice, no source. */
const boardsDiffer = 0.1;

/** The patient's pin right after the donor's: in whatever way that was named, it is what is expected here. */
const besideDensity = (
  pin: PlannedPin,
  donor: number,
  value: number,
  measure: MeasureFunction,
): number => {
  const isNothing = donor <= pin.shortLimit;
  const expected = isNothing
    ? { nominal: donor, low: 0, high: pin.shortLimit }
    : { nominal: donor, low: donor * (1 - boardsDiffer), high: donor * (1 + boardsDiffer) };
  return firstTouchDensity({ ...pin, expected }, value, { measure, mate: null, shift: noShift });
};

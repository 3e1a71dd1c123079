// Follows the probe through the readings: in the air, landing on something, or resting on what was already
// captured. Keeps the bounds of every gap; judging them is not done here. Each function returns a new state and
// leaves the old one alone.
import { type Clock, stoppedClock, tick } from './clock.js';
import { beginGap, type Gap, unknownGap, withBrush, withRun } from './gap.js';
import { alike, beginRest, type Rest, restOnce } from './rest.js';
import { beginTouch, type Display, extendTouch, type Scale, type Touch } from './touch.js';

export interface EndedTouch {
  readonly from: number;
  readonly to: number;
  readonly value: number;
}

export interface Contact {
  readonly clock: Clock;
  readonly touch: Touch | null;
  readonly rest: Rest | null;
  /** What lies before the present touch, or before the present air. */
  readonly gap: Gap;
  /** The present run of overload: last contact before it, its first and latest overload. */
  readonly air: Air | null;
  /** Blank readings in a row. */
  readonly blanks: number;
  /** The last few touches that ended in the air, oldest first. */
  readonly ended: readonly EndedTouch[];
}

export interface Air {
  readonly after: number | null;
  readonly from: number;
  readonly to: number;
  /** What was left for this air just now without a capture. */
  readonly left: LeftTouch | null;
}

export interface LeftTouch {
  /** What lay before the touch, and its first reading. */
  readonly gap: Gap;
  readonly landing: number;
  /** A last reading that did not fit the others. */
  readonly odd: number | null;
}

export const noContact: Contact = {
  clock: stoppedClock,
  touch: null,
  rest: null,
  gap: unknownGap,
  air: null,
  blanks: 0,
  ended: [],
};

/** What the probe does while nobody watches is unknown: slip and lift are then equally likely. */
export const afterBlindness = ({ clock }: Contact): Contact => ({ ...noContact, clock });

/** A gap surely no longer than this (seconds) was a slip. */
const surelySlipS = 0.4;
const keptEnded = 3;

// What nearly every reading changes is written out field by field: that copies many times faster than a spread,
// and a saved session has readings by the million.
export const seeOverload = (contact: Contact, stamp: number): Contact => {
  const clock = tick(contact.clock, stamp);
  const { touch, rest, gap, air } = contact;
  if (air !== null) {
    const { ended } = contact;
    const longer = { after: air.after, from: air.from, to: clock.t, left: null };
    return { clock, touch, rest, gap, air: longer, blanks: 0, ended };
  }
  const after = touch?.creep.lastT ?? rest?.odd?.t ?? rest?.lastT ?? null;
  return {
    clock,
    touch: null,
    rest: null,
    gap: rest === null ? leftUncaptured(gap, touch) : leftRest(rest),
    air: { after, from: clock.t, to: clock.t, left: touch === null ? null : leftTouch(gap, touch) },
    blanks: 0,
    ended: touch === null ? contact.ended : [...contact.ended.slice(1 - keptEnded), ended(touch)],
  };
};

/** A garbled reading tells the time and nothing else. */
export const seeNothing = (contact: Contact, stamp: number): Contact => ({
  ...contact,
  clock: tick(contact.clock, stamp),
});

/** One blank may be a glitch; more of them are a range change, and then contact was lost before. */
export const seeBlank = (contact: Contact, stamp: number): Contact => {
  const { rest, touch } = contact;
  const clock = tick(contact.clock, stamp);
  const blanks = contact.blanks + 1;
  if (blanks < blanksOfRanging && !rest?.odd) return { ...contact, clock, blanks };
  const gap = rest === null ? leftUncaptured(contact.gap, touch) : leftRest(rest);
  const blankS = Math.max(gap.blankS, blanks * clock.periodS);
  return { ...contact, clock, blanks, rest: null, touch: null, gap: { ...gap, blankS } };
};

const blanksOfRanging = 2;

export const seeValue = (
  contact: Contact,
  stamp: number,
  value: number,
  display: Display,
  scale: Scale,
): Contact => {
  const clock = tick(contact.clock, stamp);
  const { rest, touch } = contact;
  if (rest !== null) {
    if (alike(value, rest.level, scale)) return seeSame(contact, rest, stamp, value);
    return offRest({ ...contact, clock, blanks: 0 }, rest, value, display);
  }
  if (touch !== null) {
    const { gap, air, ended } = contact;
    const longer = extendTouch(touch, clock.t, value, display, scale);
    return { clock, touch: longer, rest, gap, air, blanks: 0, ended };
  }
  return land({ ...contact, clock }, value, display, scale);
};

/** One more reading of what the probe rests on. */
export const seeSame = (contact: Contact, rest: Rest, stamp: number, value: number): Contact => {
  const clock = tick(contact.clock, stamp);
  return {
    clock,
    touch: null,
    rest: restOnce(rest, clock.t, value),
    gap: contact.gap,
    air: null,
    blanks: 0,
    ended: contact.ended,
  };
};

/** The touch was captured: the probe now rests on its level. */
export const restOn = (contact: Contact, of: number | null, level: number): Contact => {
  const { touch, rest, clock } = contact;
  const value = touch?.creep.last ?? rest?.value ?? level;
  return {
    clock,
    touch: null,
    rest: beginRest(of, level, clock.t, value),
    gap: unknownGap,
    air: null,
    blanks: 0,
    ended: [],
  };
};

/** The touch that was just left was captured all the same: the probe is in the air, off its level. */
export const leaveCaptured = (contact: Contact, of: number, level: number, air: Air): Contact => ({
  ...contact,
  gap: beginGap(of, level, air.after ?? air.from, air.left?.odd ?? null),
  air: { ...air, left: null },
  ended: [],
});

/** The touches in the gap so far had a meaning of their own: ground taps, hunting before an answer. */
export const forgetGap = (contact: Contact): Contact => ({
  ...contact,
  gap: unknownGap,
  ended: [],
});

/** Whatever the probe touches now belongs to the past: only a new touch counts. */
export const consumeTouch = (contact: Contact): Contact =>
  contact.touch === null ? contact : restOn(contact, null, contact.touch.creep.last);

/** Whatever the probe touches or has left is no pin of the walk. */
export const disown = (contact: Contact): Contact => {
  if (contact.rest !== null) return restOn(contact, null, contact.rest.level);
  return contact.touch === null ? forgetGap(contact) : consumeTouch(contact);
};

/** What the probe touches is to be read once more: nothing that was shown so far counts. */
export const reopenTouch = (contact: Contact): Contact => ({
  ...contact,
  touch: null,
  rest: null,
  gap: unknownGap,
});

/** By its time alone the gap before the present touch cannot have been a lift. */
export const isSurelySlip = ({ gap, clock }: Pick<Contact, 'gap' | 'clock'>): boolean => {
  const { level, offS, departing, blankS } = gap;
  if (level === null || offS === null || blankS > 0) return false;
  return offS + (0.5 + 0.6 * departing) * clock.periodS <= surelySlipS;
};

const leftTouch = (gap: Gap, { creep, odd }: Touch): LeftTouch => ({
  gap,
  landing: creep.first,
  odd: odd?.value ?? null,
});

const ended = ({ creep }: Touch): EndedTouch => ({
  from: creep.startT,
  to: creep.lastT,
  value: creep.last,
});

const leftRest = (rest: Rest): Gap =>
  beginGap(rest.of, rest.level, rest.lastT, rest.odd?.value ?? null);

const leftUncaptured = (gap: Gap, touch: Touch | null): Gap =>
  touch === null ? gap : withBrush(gap, touch.creep.lastT - touch.since, touch.creep.last);

const land = (contact: Contact, value: number, display: Display, scale: Scale): Contact => {
  const { air, clock, ended: before } = contact;
  const gap =
    air === null || air.after === null ? contact.gap : withRun(contact.gap, air.to - air.after);
  const { of, level } = gap;
  if (level !== null && isSurelySlip({ gap, clock }) && alike(value, level, scale)) {
    return {
      clock,
      touch: null,
      rest: beginRest(of, level, clock.t, value),
      gap: unknownGap,
      air: null,
      blanks: 0,
      ended: before,
    };
  }
  const touch = beginTouch(clock.t, value, display, false);
  return { clock, touch, rest: null, gap, air: null, blanks: 0, ended: before };
};

/** A reading elsewhere: once is a glitch or a slip, twice in a row the probe rests there no more. */
const offRest = (contact: Contact, rest: Rest, value: number, display: Display): Contact => {
  const { t } = contact.clock;
  if (rest.odd === null) return { ...contact, rest: { ...rest, odd: { t, value } } };
  return {
    ...contact,
    rest: null,
    gap: leftRest(rest),
    touch: beginTouch(t, value, display, true),
  };
};

// Follows the probe through the readings: in the air, landing on something, or resting on what was already
<<<<<<< /tmp/merge/ours.ts
// captured. It tells a slip from a lift only by keeping the bounds of every gap; judging them is not done here.
// Each function returns a new state and leaves the old one alone.
import { decadeStep } from '../measure/decade-step.js';
import { addToCreep, beginCreep, type Creep } from './creep.js';

/** How the meter showed a reading; ranges are never mixed in one judgement, for the test current differs. */
export interface Display {
  readonly range?: number | undefined;
  readonly resolution?: number | undefined;
}

/** A run of contact readings that has not been captured yet. */
export interface Touch {
  readonly creep: Creep;
  readonly display: Display;
  /** One reading that did not fit the others, set aside until the next tells whether it was a glitch. */
  readonly odd: { readonly t: number; readonly value: number } | null;
  /** The first sample was dropped: the meter had averaged over the landing. */
  readonly trimmed: boolean;
  /** The coarsest decade step of which every reading is a multiple: a coarse range shows here. */
  readonly step: number;
}

/** The level the probe rests on after a capture. */
export interface Rest {
  readonly level: number;
  readonly lastT: number;
  /** Readings in a row that were equal to the last digit: a held display shows here. */
  readonly equal: number;
  readonly value: number;
}

/** All that happened since the probe last rested on a captured level. */
export interface Gap {
  /** The level it left and when, or null at the beginning. */
  readonly level: number | null;
  readonly leftT: number | null;
  /** The longest run of overload: it lasted at least `openLo` and less than `openHi` seconds. */
  readonly openLo: number;
  readonly openHi: number;
  /** Touches of 0.3 s and more that ended without a capture. */
  readonly brushes: number;
}
||||||| /tmp/merge/base.ts
// captured. It tells a slip from a lift only by keeping the bounds of every gap; judging them is not done here.
// Each function returns a new state and leaves the old one alone.
import { addToCreep, beginCreep, type Creep } from './creep.js';

/** A run of contact readings that has not been captured yet. */
export interface Touch {
  readonly creep: Creep;
  readonly range: number | undefined;
  /** One reading that did not fit the others, set aside until the next tells whether it was a glitch. */
  readonly odd: { readonly t: number; readonly value: number } | null;
  /** The first sample was dropped: the meter had averaged over the landing. */
  readonly trimmed: boolean;
}

/** The level the probe rests on after a capture. */
export interface Rest {
  readonly level: number;
  readonly lastT: number;
  /** Readings in a row that were equal to the last digit: a held display shows here. */
  readonly equal: number;
  readonly value: number;
}

/** All that happened since the probe last rested on a captured level. */
export interface Gap {
  /** The level it left and when, or null at the beginning. */
  readonly level: number | null;
  readonly leftT: number | null;
  /** The longest run of overload: it lasted at least `openLo` and less than `openHi` seconds. */
  readonly openLo: number;
  readonly openHi: number;
  /** Touches of 0.3 s and more that ended without a capture. */
  readonly brushes: number;
}
=======
// captured. Keeps the bounds of every gap; judging them is not done here. Each function returns a new state and
// leaves the old one alone.
import { type Clock, stoppedClock, tick } from './clock.js';
import { beginGap, type Gap, unknownGap, withBrush, withRun } from './gap.js';
import { alike, beginRest, type Rest, restOnce } from './rest.js';
import { beginTouch, type Display, extendTouch, type Scale, type Touch } from './touch.js';
>>>>>>> /tmp/settle/wt/src/core/walk/contact.ts

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

/** A gap surely no longer than this (seconds) was a slip. */
const surelySlipS = 0.4;
const keptEnded = 3;

<<<<<<< /tmp/merge/ours.ts
/** True when two readings may well be the same thing read twice. */
export const alike = (a: number, b: number, scale: Scale): boolean =>
  Math.abs(a - b) <= Math.max(0.025 * Math.abs(b), 5 * scale.noise, scale.floor);

export const seeOverload = (contact: Contact, t: number): Contact => {
  const timed = tick(contact, t);
  if (contact.air !== null) {
    const { after, from } = contact.air;
    return withAir(timed, { after, from, to: t });
  }
  const { touch, rest, gap } = contact;
  const after = touch?.creep.lastT ?? rest?.lastT ?? null;
  const brushed = touch !== null && touch.creep.lastT - touch.creep.startT >= leastBrushS;
||||||| /tmp/merge/base.ts
/** True when two readings may well be the same thing read twice. */
export const alike = (a: number, b: number, scale: Scale): boolean =>
  Math.abs(a - b) <= Math.max(0.025 * Math.abs(b), 5 * scale.noise, scale.floor);

export const seeOverload = (contact: Contact, t: number): Contact => {
  const timed = tick(contact, t);
  if (contact.air !== null) return { ...timed, air: { ...contact.air, to: t } };
  const { touch, rest, gap } = contact;
  const after = touch?.creep.lastT ?? rest?.lastT ?? null;
  const brushed = touch !== null && touch.creep.lastT - touch.creep.startT >= leastBrushS;
=======
export const seeOverload = (contact: Contact, stamp: number): Contact => {
  const clock = tick(contact.clock, stamp);
  const { touch, rest, gap, air } = contact;
  if (air !== null) {
    return { ...contact, clock, blanks: 0, air: { after: air.after, from: air.from, to: clock.t } };
  }
  const after = touch?.creep.lastT ?? rest?.odd?.t ?? rest?.lastT ?? null;
>>>>>>> /tmp/settle/wt/src/core/walk/contact.ts
  return {
    clock,
    touch: null,
    rest: null,
    gap: rest === null ? leftUncaptured(gap, touch) : leftRest(rest),
    air: { after, from: clock.t, to: clock.t },
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
<<<<<<< /tmp/merge/ours.ts
  const timed = tick(contact, t);
  if (contact.rest !== null) return rest(timed, contact.rest, t, value, display, scale);
  if (contact.touch !== null) {
    return withTouch(timed, extend(contact.touch, t, value, display, scale, timed.periodS));
  }
  const landed = land(timed, t);
  const { level, openHi } = landed.gap;
  if (level !== null && openHi <= surelySlipS && alike(value, level, scale)) {
    return resume(landed, level, t, value);
||||||| /tmp/merge/base.ts
  const timed = tick(contact, t);
  if (contact.rest !== null) return rest(timed, contact.rest, t, value, range, scale);
  if (contact.touch !== null) {
    return { ...timed, touch: extend(contact.touch, t, value, range, scale, timed.periodS) };
  }
  const landed = land(timed, t);
  const { level, openHi } = landed.gap;
  if (level !== null && openHi <= surelySlipS && alike(value, level, scale)) {
    return resume(landed, level, t, value);
=======
  const clock = tick(contact.clock, stamp);
  const { rest, touch } = contact;
  if (rest !== null) return onRest({ ...contact, clock, blanks: 0 }, rest, value, display, scale);
  if (touch !== null) {
    return { ...contact, clock, blanks: 0, touch: extendTouch(touch, clock.t, value, display, scale) };
>>>>>>> /tmp/settle/wt/src/core/walk/contact.ts
  }
<<<<<<< /tmp/merge/ours.ts
  return { ...landed, touch: begin(t, value, display) };
||||||| /tmp/merge/base.ts
  return { ...landed, touch: begin(t, value, range) };
=======
  return land({ ...contact, clock }, value, display, scale);
>>>>>>> /tmp/settle/wt/src/core/walk/contact.ts
};

/** The touch was captured: the probe now rests on its level. */
export const restOn = (contact: Contact, of: number | null, level: number): Contact => {
  const { touch, rest, clock } = contact;
  const value = touch?.creep.last ?? rest?.value ?? level;
  return {
    clock,
    touch: null,
    air: null,
    gap: unknownGap,
    blanks: 0,
    ended: [],
    rest: beginRest(of, level, clock.t, value),
  };
};

<<<<<<< /tmp/merge/ours.ts
/** The touches in the gap so far had a meaning of their own: ground taps, hunting before an answer. */
export const forgetGap = (contact: Contact): Contact => ({ ...contact, gap: noGap, ended: [] });

||||||| /tmp/merge/base.ts
=======
/** The touches in the gap so far had a meaning of their own: ground taps, hunting before an answer. */
export const forgetGap = (contact: Contact): Contact => ({
  ...contact,
  gap: unknownGap,
  ended: [],
});

>>>>>>> /tmp/settle/wt/src/core/walk/contact.ts
/** Whatever the probe touches now belongs to the past: only a new touch counts. */
export const consumeTouch = (contact: Contact): Contact =>
  contact.touch === null ? contact : restOn(contact, null, contact.touch.creep.last);

/** What the probe rests on is to be read once more, from here on. */
<<<<<<< /tmp/merge/ours.ts
export const reopenTouch = (contact: Contact): Contact =>
  contact.rest === null
    ? contact
    : {
        ...contact,
        rest: null,
        gap: noGap,
        touch: begin(contact.rest.lastT, contact.rest.value, {}),
      };

/** What every reading changes is copied field by field: many times faster than a spread. */
const withAir = (
  { lastT, periodS, touch, rest: resting, gap, ended }: Contact,
  air: Contact['air'],
): Contact => ({ lastT, periodS, touch, rest: resting, gap, air, ended });

const withTouch = (
  { lastT, periodS, rest: resting, gap, air, ended }: Contact,
  touch: Touch,
): Contact => ({ lastT, periodS, touch, rest: resting, gap, air, ended });

const withRest = ({ lastT, periodS, touch, gap, air, ended }: Contact, resting: Rest): Contact => ({
  lastT,
  periodS,
  touch,
  rest: resting,
  gap,
  air,
  ended,
});

const tick = (contact: Contact, t: number): Contact => {
  const dt = contact.lastT === null ? 0 : t - contact.lastT;
  const periodS =
    dt > 0 && dt < 2 ? contact.periodS + 0.2 * (dt - contact.periodS) : contact.periodS;
  const { touch, rest: resting, gap, air, ended } = contact;
  return { lastT: t, periodS, touch, rest: resting, gap, air, ended };
||||||| /tmp/merge/base.ts
export const reopenTouch = (contact: Contact): Contact =>
  contact.rest === null
    ? contact
    : {
        ...contact,
        rest: null,
        gap: noGap,
        touch: begin(contact.rest.lastT, contact.rest.value, undefined),
      };

const tick = (contact: Contact, t: number): Contact => {
  const dt = contact.lastT === null ? 0 : t - contact.lastT;
  const periodS =
    dt > 0 && dt < 2 ? contact.periodS + 0.2 * (dt - contact.periodS) : contact.periodS;
  return { ...contact, lastT: t, periodS };
=======
export const reopenTouch = (contact: Contact): Contact => {
  const { rest } = contact;
  if (rest === null) return contact;
  const touch = beginTouch(rest.lastT, rest.value, {}, false);
  return { ...contact, rest: null, gap: unknownGap, touch };
>>>>>>> /tmp/settle/wt/src/core/walk/contact.ts
};

<<<<<<< /tmp/merge/ours.ts
const begin = (t: number, value: number, display: Display): Touch => ({
  creep: beginCreep(t, value),
  display,
  odd: null,
  trimmed: false,
  step: decadeStep(value),
||||||| /tmp/merge/base.ts
const begin = (t: number, value: number, range: number | undefined): Touch => ({
  creep: beginCreep(t, value),
  range,
  odd: null,
  trimmed: false,
=======
/** By its time alone the gap before the present touch cannot have been a lift. */
export const isSurelySlip = ({ gap, clock }: Pick<Contact, 'gap' | 'clock'>): boolean => {
  const { level, offS, departing, blankS } = gap;
  if (level === null || offS === null || blankS > 0) return false;
  return offS + (0.5 + 0.6 * departing) * clock.periodS <= surelySlipS;
};

const ended = ({ creep }: Touch): EndedTouch => ({
  from: creep.startT,
  to: creep.lastT,
  value: creep.last,
>>>>>>> /tmp/settle/wt/src/core/walk/contact.ts
});

const leftRest = (rest: Rest): Gap => 
  beginGap(rest.of, rest.level, rest.lastT, rest.odd?.value ?? null);

const leftUncaptured = (gap: Gap, touch: Touch | null): Gap =>
  touch === null ? gap : withBrush(gap, touch.creep.lastT - touch.since, touch.creep.last);

const land = (contact: Contact, value: number, display: Display, scale: Scale): Contact => {
  const { air, clock, ended: before } = contact;
  const gap = air === null || air.after === null ? contact.gap : withRun(contact.gap, air.to - air.after);
  const { of, level } = gap;
  if (level !== null && isSurelySlip({ gap, clock }) && alike(value, level, scale)) {
    return {
      clock,
      touch: null,
      air: null,
      gap: unknownGap,
      blanks: 0,
      ended: before,
      rest: beginRest(of, level, clock.t, value),
    };
  }
  const touch = beginTouch(clock.t, value, display, false);
  return { clock, touch, rest: null, gap, air: null, blanks: 0, ended: before };
};

const onRest = (
  contact: Contact,
  rest: Rest,
  value: number,
  display: Display,
  scale: Scale,
): Contact => {
<<<<<<< /tmp/merge/ours.ts
  if (alike(value, was.level, scale)) {
    return withRest(contact, {
      level: was.level + 0.1 * (value - was.level),
      lastT: t,
      equal: value === was.value ? was.equal + 1 : 1,
      value,
    });
  }
||||||| /tmp/merge/base.ts
  if (alike(value, was.level, scale)) {
    return {
      ...contact,
      rest: {
        level: was.level + 0.1 * (value - was.level),
        lastT: t,
        equal: value === was.value ? was.equal + 1 : 1,
        value,
      },
    };
  }
=======
  const { t } = contact.clock;
  if (alike(value, rest.level, scale)) return { ...contact, rest: restOnce(rest, t, value) };
  if (rest.odd === null) return { ...contact, rest: { ...rest, odd: { t, value } } };
>>>>>>> /tmp/settle/wt/src/core/walk/contact.ts
  return {
    ...contact,
    rest: null,
<<<<<<< /tmp/merge/ours.ts
    gap: { ...noGap, level: was.level, leftT: was.lastT },
    touch: begin(t, value, display),
||||||| /tmp/merge/base.ts
    gap: { ...noGap, level: was.level, leftT: was.lastT },
    touch: begin(t, value, range),
=======
    gap: leftRest(rest),
    touch: beginTouch(t, value, display, true),
>>>>>>> /tmp/settle/wt/src/core/walk/contact.ts
  };
};
<<<<<<< /tmp/merge/ours.ts

const resume = (contact: Contact, level: number, t: number, value: number): Contact => ({
  ...contact,
  touch: null,
  gap: noGap,
  rest: { level, lastT: t, equal: 1, value },
});

const extend = (
  touch: Touch,
  t: number,
  value: number,
  display: Display,
  scale: Scale,
  periodS: number,
): Touch => {
  const { creep, odd } = touch;
  if (display.range !== touch.display.range || display.resolution !== touch.display.resolution) {
    return begin(t, value, display);
  }
  const step = Math.abs(value - creep.last);
  if (creep.n === 1 && !touch.trimmed && t - creep.startT <= Math.max(0.1, 1.5 * periodS)) {
    if (step > Math.max(0.03 * Math.abs(value), 6 * scale.noise)) {
      return { ...begin(t, value, display), trimmed: true };
    }
  }
  if (creep.n >= 3 && step > Math.max(0.05 * Math.abs(creep.last), 8 * scale.noise, scale.floor)) {
    if (odd === null) return { ...touch, odd: { t, value } };
    const restarted = begin(odd.t, odd.value, display);
    return Math.abs(odd.value - value) <= 0.25 * Math.abs(value)
      ? {
          ...restarted,
          creep: addToCreep(restarted.creep, t, value),
          step: Math.min(restarted.step, decadeStep(value)),
        }
      : begin(t, value, display);
  }
  return {
    creep: addToCreep(creep, t, value),
    display: touch.display,
    odd: null,
    trimmed: touch.trimmed,
    step: Math.min(touch.step, decadeStep(value)),
  };
};
||||||| /tmp/merge/base.ts

const resume = (contact: Contact, level: number, t: number, value: number): Contact => ({
  ...contact,
  touch: null,
  gap: noGap,
  rest: { level, lastT: t, equal: 1, value },
});

const extend = (
  touch: Touch,
  t: number,
  value: number,
  range: number | undefined,
  scale: Scale,
  periodS: number,
): Touch => {
  const { creep, odd } = touch;
  // Ranges are never mixed in one judgement: the test current differs.
  if (range !== touch.range) return begin(t, value, range);
  const step = Math.abs(value - creep.last);
  if (creep.n === 1 && !touch.trimmed && t - creep.startT <= Math.max(0.1, 1.5 * periodS)) {
    if (step > Math.max(0.03 * Math.abs(value), 6 * scale.noise)) {
      return { ...begin(t, value, range), trimmed: true };
    }
  }
  if (creep.n >= 3 && step > Math.max(0.05 * Math.abs(creep.last), 8 * scale.noise, scale.floor)) {
    if (odd === null) return { ...touch, odd: { t, value } };
    const restarted = begin(odd.t, odd.value, range);
    return Math.abs(odd.value - value) <= 0.25 * Math.abs(value)
      ? { ...restarted, creep: addToCreep(restarted.creep, t, value) }
      : begin(t, value, range);
  }
  return { ...touch, creep: addToCreep(creep, t, value), odd: null };
};
=======
>>>>>>> /tmp/settle/wt/src/core/walk/contact.ts

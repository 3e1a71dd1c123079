// Follows the probe through the readings: in the air, landing on something, or resting on what was already
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

export interface EndedTouch {
  readonly from: number;
  readonly to: number;
  readonly value: number;
}

export interface Contact {
  readonly lastT: number | null;
  /** Smoothed time between readings, seconds. */
  readonly periodS: number;
  readonly touch: Touch | null;
  readonly rest: Rest | null;
  readonly gap: Gap;
  /** The present run of overload: last contact before it, its first and latest overload. */
  readonly air: {
    readonly after: number | null;
    readonly from: number;
    readonly to: number;
  } | null;
  /** The last few touches that ended in the air, oldest first. */
  readonly ended: readonly EndedTouch[];
}

/** How a reading is compared with others: its scatter and the smallest difference that means anything. */
export interface Scale {
  readonly noise: number;
  readonly floor: number;
}

const noGap: Gap = { level: null, leftT: null, openLo: 0, openHi: 0, brushes: 0 };

export const noContact: Contact = {
  lastT: null,
  periodS: 0.1,
  touch: null,
  rest: null,
  gap: noGap,
  air: null,
  ended: [],
};

/** A gap this short (seconds) back to the same level is a slip, whatever else is possible. */
const surelySlipS = 0.35;
const leastBrushS = 0.3;
const keptEnded = 3;

/** True when two readings may well be the same thing read twice. */
export const alike = (a: number, b: number, scale: Scale): boolean =>
  Math.abs(a - b) <= Math.max(0.025 * Math.abs(b), 5 * scale.noise, scale.floor);

export const seeOverload = (contact: Contact, t: number): Contact => {
  const timed = tick(contact, t);
  if (contact.air !== null) return { ...timed, air: { ...contact.air, to: t } };
  const { touch, rest, gap } = contact;
  const after = touch?.creep.lastT ?? rest?.lastT ?? null;
  const brushed = touch !== null && touch.creep.lastT - touch.creep.startT >= leastBrushS;
  return {
    ...timed,
    touch: null,
    rest: null,
    gap:
      rest !== null
        ? { ...noGap, level: rest.level, leftT: rest.lastT }
        : { ...gap, brushes: gap.brushes + (brushed ? 1 : 0) },
    air: { after, from: t, to: t },
    ended:
      touch === null
        ? contact.ended
        : [
            ...contact.ended.slice(1 - keptEnded),
            { from: touch.creep.startT, to: touch.creep.lastT, value: touch.creep.last },
          ],
  };
};

/** A blank or garbled reading tells the time and nothing else. */
export const seeNothing = (contact: Contact, t: number): Contact => tick(contact, t);

export const seeValue = (
  contact: Contact,
  t: number,
  value: number,
  display: Display,
  scale: Scale,
): Contact => {
  const timed = tick(contact, t);
  if (contact.rest !== null) return rest(timed, contact.rest, t, value, display, scale);
  if (contact.touch !== null) {
    return { ...timed, touch: extend(contact.touch, t, value, display, scale, timed.periodS) };
  }
  const landed = land(timed, t);
  const { level, openHi } = landed.gap;
  if (level !== null && openHi <= surelySlipS && alike(value, level, scale)) {
    return resume(landed, level, t, value);
  }
  return { ...landed, touch: begin(t, value, display) };
};

/** The touch was captured: the probe now rests on its level. */
export const restOn = (contact: Contact, level: number): Contact => {
  const t = contact.lastT ?? 0;
  const value = contact.touch?.creep.last ?? level;
  return {
    ...contact,
    touch: null,
    gap: noGap,
    ended: [],
    rest: { level, lastT: t, equal: 1, value },
  };
};

/** The touches in the gap so far had a meaning of their own: ground taps, hunting before an answer. */
export const forgetGap = (contact: Contact): Contact => ({ ...contact, gap: noGap, ended: [] });

/** Whatever the probe touches now belongs to the past: only a new touch counts. */
export const consumeTouch = (contact: Contact): Contact =>
  contact.touch === null ? contact : restOn(contact, contact.touch.creep.last);

/** What the probe rests on is to be read once more, from here on. */
export const reopenTouch = (contact: Contact): Contact =>
  contact.rest === null
    ? contact
    : {
        ...contact,
        rest: null,
        gap: noGap,
        touch: begin(contact.rest.lastT, contact.rest.value, {}),
      };

const tick = (contact: Contact, t: number): Contact => {
  const dt = contact.lastT === null ? 0 : t - contact.lastT;
  const periodS =
    dt > 0 && dt < 2 ? contact.periodS + 0.2 * (dt - contact.periodS) : contact.periodS;
  return { ...contact, lastT: t, periodS };
};

const begin = (t: number, value: number, display: Display): Touch => ({
  creep: beginCreep(t, value),
  display,
  odd: null,
  trimmed: false,
  step: decadeStep(value),
});

/** Closes a run of overload and keeps its bounds. */
const land = (contact: Contact, t: number): Contact => {
  const { air, gap } = contact;
  if (air === null) return contact;
  const openHi = air.after === null ? Number.MAX_VALUE : t - air.after;
  const openLo = air.to - air.from;
  return {
    ...contact,
    air: null,
    gap: openHi > gap.openHi ? { ...gap, openLo: Math.max(openLo, gap.openLo), openHi } : gap,
  };
};

const rest = (
  contact: Contact,
  was: Rest,
  t: number,
  value: number,
  display: Display,
  scale: Scale,
): Contact => {
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
  return {
    ...contact,
    rest: null,
    gap: { ...noGap, level: was.level, leftT: was.lastT },
    touch: begin(t, value, display),
  };
};

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
    ...touch,
    creep: addToCreep(creep, t, value),
    odd: null,
    step: Math.min(touch.step, decadeStep(value)),
  };
};

// What the walk hears of the reply pads, folded from its readings. A touch of a pad belongs to no pin: it leaves no
// trace in what is known of the gap between two captures, but that the probe was off for so long.
import type { EventOf } from '../events.js';
import { inferResolution } from '../measure/accuracy-row.js';
import { padAt } from '../pads/match-pad.js';
import type { Pad } from '../pads/pad.js';
import {
  createPadListener,
  mayBePad,
  type PadHeard,
  type PadState,
  padStep,
} from '../pads/pad-listener.js';
import { isOver, type PadRun, touchOf, withContact } from '../pads/pad-run.js';
import { touchUncertainty } from '../pads/touch-uncertainty.js';
import type { Reading } from '../reading.js';
import type { Contact } from './contact.js';
import type { Gap } from './gap.js';
import { shownBy } from './shown.js';
import type { WalkState } from './state.js';
import { isPlain, unusable } from './usable.js';

export interface PadEar {
  readonly listener: PadState;
  /** The present contact with anything that was not captured, and what was known of the gap before it. */
  readonly run: PadRun | null;
  readonly brush: Gap['brush'];
  /** What the latest reading let hear, still to be told. */
  readonly heard: readonly PadHeard[];
}

export const openEar = ({ pads }: Pick<EventOf<'session-opened'>, 'pads'>): PadEar | null =>
  pads === undefined || pads.length === 0
    ? null
    : { listener: createPadListener(pads, 0.1), run: null, brush: null, heard: [] };

/** The state after a reading, `before` being the one without it, with what the pads let hear. */
export const listen = (before: WalkState, after: WalkState, reading: Reading): WalkState => {
  const { pads, contact } = after;
  if (pads === null) return after;
  if (after.press !== null || after.paused !== null || contact.rest !== null)
    return quiet(after, pads);
  const shown = shownBy(reading);
  const { value } = shown;
  if (value === undefined && shown.overload === undefined) return quiet(after, pads, pads.run);
  if (!isPlain(after.plan, shown) && unusable(after.plan, reading) !== null)
    return quiet(after, pads);
  const t = contact === before.contact ? reading.t : contact.clock.t;
  if (value !== undefined) {
    const brush = pads.run === null ? before.contact.gap.brush : pads.brush;
    return { ...after, pads: { ...pads, run: withContact(pads.run, t, value), brush, heard: [] } };
  }
  return inTheAir(after, pads, t);
};

/** Nothing that was heard before counts any more: the hands were elsewhere. */
export const deafened = (ear: PadEar | null): PadEar | null =>
  ear === null
    ? null
    : { ...ear, run: null, heard: [], listener: { ...ear.listener, first: null, asked: null } };

export const withReply = (
  ear: PadEar | null,
  event: EventOf<'reply-given' | 'reply-cancelled' | 'reply-shadowed'>,
): PadEar | null => {
  if (ear === null) return null;
  const { listener } = ear;
  if (event.type !== 'reply-shadowed')
    return { ...ear, heard: [], listener: { ...listener, asked: null, first: null } };
  return {
    ...ear,
    heard: [],
    listener: { ...listener, shadowed: [...listener.shadowed, event.reply] },
  };
};

/** A touch that may be of a pad is no pin before it has lasted. */
export const mayBeReply = (
  { pads, contact, accuracy, plan }: WalkState,
  value: number,
  resolution = inferResolution(accuracy, plan.function, value, undefined),
): boolean => {
  const { touch, clock } = contact;
  if (pads === null || touch === null) return false;
  const u = touchUncertainty(value, resolution, plan.function);
  const { periodS } = clock;
  const lastsS = touch.creep.lastT - touch.since;
  return mayBePad({ ...pads.listener, periodS }, { value, u, lastsS });
};

export const askedReply = ({ pads }: Pick<WalkState, 'pads'>): Pad['command'] | null =>
  pads?.listener.asked?.command ?? null;

const quiet = (state: WalkState, pads: PadEar, run: PadRun | null = null): WalkState =>
  pads.run === run && pads.heard.length === 0
    ? state
    : { ...state, pads: { ...pads, run, heard: [] } };

const inTheAir = (state: WalkState, pads: PadEar, t: number): WalkState => {
  const { run } = pads;
  const ended = run !== null && isOver(run, t);
  const touched = ended ? afterTouch(state, pads, run) : { ...pads, heard: [] };
  const { state: listener, heard } = padStep(touched.listener, { kind: 'air', t });
  if (!ended && heard.length === 0 && pads.heard.length === 0) return state;
  const { contact } = state;
  const isReply = ended && readsLikeAPad(touched.listener, run, state);
  return {
    ...state,
    pads: { ...touched, listener, heard: [...touched.heard, ...heard] },
    contact: isReply ? withoutBrush(contact, pads.brush, run.to) : contact,
  };
};

const afterTouch = (state: WalkState, pads: PadEar, run: PadRun): PadEar => {
  const { periodS } = state.contact.clock;
  const touch = touchOf(run, uncertaintyIn(state));
  const { state: listener, heard } = padStep(
    { ...pads.listener, periodS },
    { kind: 'touch', touch },
  );
  return { ...pads, listener, run: null, heard };
};

const readsLikeAPad = ({ pads }: PadState, run: PadRun, state: WalkState): boolean => {
  const { value, u } = touchOf(run, uncertaintyIn(state));
  return padAt(pads, value, u) !== null;
};

const uncertaintyIn =
  ({ accuracy, plan }: WalkState) =>
  (value: number): number =>
    touchUncertainty(
      value,
      inferResolution(accuracy, plan.function, value, undefined),
      plan.function,
    );

/** The probe was at a pad until `t`: since it left the pin it has been nowhere else. */
const withoutBrush = (contact: Contact, brush: Gap['brush'], t: number): Contact => {
  const { gap } = contact;
  const { leftT, offS } = gap;
  const longer = leftT === null || offS === null ? offS : Math.max(offS, t - leftT);
  return { ...contact, gap: { ...gap, brush, offS: longer } };
};

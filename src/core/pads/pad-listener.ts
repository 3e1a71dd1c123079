// Hears the pads: two short touches of the same pad, alone, are a command. One touch never is; nor are two that a
// third one follows, a long one, or two of a pad that a line of this board was found to read like. A command that was
// heard waits: it counts once the walk reads a pin elsewhere, or the probe has stayed in the air for long, and a third
// touch takes it back. A line that happens to read like a pad is touched again, and so is never obeyed. A pure fold.
import { padAt, padReach } from './match-pad.js';
import type { Pad, PadCommand } from './pad.js';

/** A touch that has ended, all times in seconds. */
export interface PadTouch {
  /** First and last reading in contact. */
  readonly from: number;
  readonly to: number;
  readonly value: number;
  /** Standard uncertainty, see `touchUncertainty`. */
  readonly u: number;
}

export type PadInput =
  | { readonly kind: 'touch'; readonly touch: PadTouch }
  /** The probe is in the air. */
  | { readonly kind: 'air'; readonly t: number }
  /** The walk reads a pin: to be told before the reading is given to the pin. */
  | {
      readonly kind: 'line';
      /** First reading of the touch. */
      readonly from: number;
      readonly value: number;
      readonly u: number;
    }
  | { readonly kind: 'cancel' };

export type PadHeard =
  /** To be echoed now, and not to be carried out yet. */
  | { readonly heard: 'asked'; readonly command: PadCommand }
  /** To be carried out now. */
  | { readonly heard: 'given'; readonly command: PadCommand }
  | { readonly heard: 'cancelled'; readonly command: PadCommand }
  /** A line reads like this pad, which is not listened to from here on. */
  | { readonly heard: 'shadowed'; readonly command: PadCommand };

export interface PadState {
  readonly pads: readonly Pad[];
  /** Seconds between readings: a touch may last up to two of them longer than its readings show. */
  readonly periodS: number;
  readonly shadowed: readonly PadCommand[];
  /** End of the latest touch of anything. */
  readonly touchedT: number | null;
  readonly first: { readonly command: PadCommand; readonly to: number } | null;
  /** Waits; its second touch ended at `to`. */
  readonly asked: { readonly command: PadCommand; readonly to: number } | null;
}

/** A brush is shorter than this, a touch that means something longer. All times: common practice, no source. */
const shortestTapS = 0.35;
/** A touch that reads a pin is held longer, once the meter has had time to show it. */
const longestTapS = 1;
/** A pad held for up to this long is no command, and still no pin. */
const heldByMistakeS = 2.5;
const longestLiftS = 0.8;
/** The hand travels between the connector and the pads: nothing is touched for so long before and after. */
const travelS = 0.6;
/** Who hunts for a pin touches it again sooner than this: ten seconds under the microscope are no answer. */
const hunted = 12;
/** A command that moves nothing does little harm, and is waited for. */
const waitedFor = 3;
const patienceS: Readonly<Record<PadCommand, number>> = {
  open: hunted,
  back: hunted,
  next: hunted,
  skip: hunted,
  'press-test': waitedFor,
  note: waitedFor,
  'repeat-cue': waitedFor,
};

export const createPadListener = (pads: readonly Pad[], periodS: number): PadState => ({
  pads,
  periodS,
  shadowed: [],
  touchedT: null,
  first: null,
  asked: null,
});

export interface PadStep {
  readonly state: PadState;
  readonly heard: readonly PadHeard[];
}

export const padStep = (state: PadState, input: PadInput): PadStep => {
  switch (input.kind) {
    case 'touch':
      return takeTouch(state, input.touch);
    case 'air':
      return takeAir(state, input.t);
    case 'line':
      return takeLine(state, input);
    case 'cancel':
      return cancelled(state);
  }
};

/**
 * True while a touch may still be of a pad, if only one held too long, or one that is out of use: the walk takes it
 * for no pin before it has lasted longer.
 * @param lastsS seconds since its first reading.
 */
export const mayBePad = (
  { pads, periodS }: Pick<PadState, 'pads' | 'periodS'>,
  touch: { readonly value: number; readonly u: number; readonly lastsS: number },
): boolean =>
  padAt(pads, touch.value, touch.u) !== null && touch.lastsS <= heldByMistakeS + periodS;

const takeAir = (state: PadState, t: number): PadStep =>
  state.asked !== null && t >= state.asked.to + patienceS[state.asked.command]
    ? given(state)
    : { state, heard: [] };

const takeTouch = (before: PadState, touch: PadTouch): PadStep => {
  const { state, heard } = takeAir(before, touch.from);
  const { first, touchedT, periodS, asked } = state;
  const next = { ...state, touchedT: touch.to, first: null };
  if (asked !== null) {
    const isThird =
      touch.from < asked.to + travelS || padsNear(state, touch).includes(asked.command);
    return isThird ? cancelled(next) : { state: next, heard };
  }
  const command = tapped(state, touch);
  if (command === null) return { state: next, heard };
  if (first?.command === command && touch.from - first.to <= longestLiftS + 2 * periodS) {
    return {
      state: { ...next, asked: { command, to: touch.to } },
      heard: [...heard, { heard: 'asked', command }],
    };
  }
  const isAlone = touchedT === null || touch.from - touchedT >= travelS;
  return { state: { ...next, first: isAlone ? { command, to: touch.to } : null }, heard };
};

/** The pad of a touch that may be one of two, or null. */
const tapped = ({ pads, shadowed, periodS }: PadState, touch: PadTouch): PadCommand | null => {
  const shownS = touch.to - touch.from;
  // One reading may be of anything: two are the least, however slow the meter.
  const leastS = Math.max(shortestTapS - periodS, 0.9 * periodS);
  if (shownS < leastS || shownS > longestTapS + periodS) return null;
  const command = padAt(pads, touch.value, touch.u)?.command ?? null;
  return command === null || shadowed.includes(command) ? null : command;
};

/** A line reads the same each time, so that a near value already puts the pad out of use. */
const takeLine = (
  state: PadState,
  line: { readonly from: number; readonly value: number; readonly u: number },
): PadStep => {
  const near = padsNear(state, line);
  const { asked } = state;
  const isWithdrawn =
    asked !== null && (near.includes(asked.command) || line.from < asked.to + travelS);
  const { state: left, heard } =
    asked === null ? { state, heard: [] } : isWithdrawn ? cancelled(state) : given(state);
  const fresh = near.filter((command) => !state.shadowed.includes(command));
  return {
    state: { ...left, shadowed: [...left.shadowed, ...fresh], first: null },
    heard: [...heard, ...fresh.map((command) => ({ heard: 'shadowed', command }) as const)],
  };
};

/** Commands of the pads that the value might be, with a wide margin. */
const padsNear = (
  { pads }: PadState,
  { value, u }: { readonly value: number; readonly u: number },
): PadCommand[] =>
  pads
    .filter((pad) => Math.abs(pad.value - value) <= 2 * padReach(pad, u))
    .map(({ command }) => command);

const given = (state: PadState): PadStep => resolved(state, 'given');
const cancelled = (state: PadState): PadStep => resolved(state, 'cancelled');

const resolved = (state: PadState, heard: 'given' | 'cancelled'): PadStep =>
  state.asked === null
    ? { state, heard: [] }
    : {
        state: { ...state, asked: null, first: null },
        heard: [{ heard, command: state.asked.command }],
      };

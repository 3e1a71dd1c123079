// The paced press test of one part as a fold: readings and cues in, a result at the cue that closes the last
// window. The same inputs give the same result live and in a rerun. Other inputs pass by unseen.
import type { CueName, Input } from '../inputs.js';
import { isFault, type Reading } from '../reading.js';
import { type CueWindow, reduceWindow } from './cue-window.js';
import { type Pace, paceFor } from './pace.js';
import { mostCycles } from './press-design.js';
import { type PressResult, pressResult } from './press-result.js';
import type { PressSetup } from './press-setup.js';
import { restBand, restWindow } from './rest.js';
import { slipS } from './runs.js';
import { type Band, type Seen, seeReading } from './sides.js';
import { noUpdates, type Updates, updateSeconds, updateSeen } from './update-interval.js';

export interface PressTest {
  readonly setup: PressSetup;
  /** The line's normal: given, or learned before the first press. */
  readonly band: Band | null;
  readonly updates: Updates;
  /** The cue in force; null before the first one and after the closing one. */
  readonly cue: { readonly cue: CueName; readonly fromS: number } | null;
  /** Readings since that cue and shortly before it, or the latest ones while none is in force. */
  readonly readings: readonly Reading[];
  /** What the line showed before the first press. */
  readonly rest: CueWindow | null;
  /** Press and release by turns, beginning with a press. */
  readonly windows: readonly CueWindow[];
}

export interface PressStep {
  readonly state: PressTest;
  /** At the `release` that closes the last window. */
  readonly result?: PressResult;
}

export const createPressTest = (setup: PressSetup): PressTest => ({
  setup,
  band: setup.normal,
  updates: noUpdates,
  cue: null,
  readings: [],
  rest: null,
  windows: [],
});

export const pressStep = (state: PressTest, input: Input): PressStep => {
  if (input.kind === 'reading') return { state: takeReading(state, input.reading) };
  return input.kind === 'cue' ? takeCue(state, input.cue, input.t) : { state };
};

/**
 * The result of a record that may have ended without the closing `release`. Its last window counts if it was
 * long enough to be judged at all.
 */
export const finishPressTest = (state: PressTest): PressResult => {
  const { cue, readings } = state;
  const { allowanceS, tailS } = paceOf(state);
  const lastT = readings.at(-1)?.t ?? Number.NEGATIVE_INFINITY;
  const closed = cue !== null && lastT - cue.fromS >= allowanceS + tailS;
  const { setup, windows, rest } = closed ? closeWindow(state, lastT) : state;
  return pressResult(setup, windows, rest, paceOf(state));
};

/** The cue a paced test gives when the window in force ends: on, or the closing `release`. */
export const nextCue = (state: PressTest, t: number): CueName => {
  if (state.cue?.cue === 'press') return 'release';
  if (state.cue === null) return 'press';
  const { result } = pressStep(state, { kind: 'cue', t, cue: 'release' });
  return result === undefined || !result.stops ? 'press' : 'release';
};

const paceOf = ({ setup, updates }: PressTest): Pace =>
  paceFor(updateSeconds(updates), setup.rangingS);

/** While no cue is in force only so much is kept. */
const restS = 3;

const takeReading = (state: PressTest, reading: Reading): PressTest => {
  const updates = isFault(reading) ? state.updates : updateSeen(state.updates, reading.t);
  const kept =
    state.cue === null ? state.readings.filter(({ t }) => t >= reading.t - restS) : state.readings;
  return { ...state, updates, readings: [...kept, reading] };
};

const takeCue = (state: PressTest, cue: CueName, t: number): PressStep => {
  if (state.cue === null) return { state: beginWindow(state, cue, t) };
  // A press told again while pressing is a reminder, no new window.
  if (state.cue.cue === 'press' && cue === 'press') return { state };
  const closed = closeWindow(state, t);
  const isFirstRest = state.windows.length === 0 && state.cue.cue === 'release';
  if (cue === 'press' || state.cue.cue === 'press' || isFirstRest) {
    return { state: openWith(closed, cue, t) };
  }
  return {
    state: { ...closed, readings: [] },
    result: pressResult(closed.setup, closed.windows, closed.rest, paceOf(closed)),
  };
};

/** The first cue: the time before it shows how the line rests. A `release` after the end says nothing. */
const beginWindow = (state: PressTest, cue: CueName, t: number): PressTest => {
  if (state.windows.length > 0) {
    return cue === 'release' ? state : openWith(state, cue, t);
  }
  const band = state.band ?? restBand(state.setup, state.readings);
  const rested = { ...state, band };
  if (cue === 'release') return openWith(rested, cue, t);
  const seen = seenBy(rested, state.readings);
  return { ...openWith(rested, cue, t), rest: restWindow(seen, t, updateSeconds(state.updates)) };
};

const openWith = (state: PressTest, cue: CueName, t: number): PressTest => ({
  ...state,
  cue: { cue, fromS: t },
  readings: lead(state, t),
});

/** The moments before a cue: enough to see a slip whole that began before it, and how the line stood. */
const lead = ({ readings, updates }: PressTest, t: number): Reading[] => {
  const leadS = 2 * Math.max(slipS, updateSeconds(updates));
  return readings.filter((reading) => reading.t >= t - leadS);
};

/** Reduces the window in force; whatever comes next starts from where it ended. */
const closeWindow = (state: PressTest, t: number): PressTest => {
  if (state.cue === null) return state;
  const { cue, fromS } = state.cue;
  const { updates, windows } = state;
  const isRest = windows.length === 0 && cue === 'release';
  const band = isRest ? (state.band ?? restBand(state.setup, state.readings)) : state.band;
  const seen = seenBy({ ...state, band }, state.readings);
  const updateS = updateSeconds(updates);
  const window = reduceWindow({ cue, fromS, toS: t, seen, updateS }, paceOf(state));
  const ended = { ...state, band, cue: null };
  if (isRest) return { ...ended, rest: restWindow(seen, t, updateS) };
  return windows.length < 2 * mostCycles ? { ...ended, windows: [...windows, window] } : ended;
};

const seenBy = ({ setup, band }: PressTest, readings: readonly Reading[]): Seen[] =>
  readings.flatMap((reading) => seeReading(setup, band, reading) ?? []);

// The conversation with a meter that talks by itself: listen, keep it awake, notice when it falls silent or
// floods. Never asks for a reading.

import { floodWords, silentWords } from '../../words/english-meter.js';
import type { Asked, MeterDecoder } from '../driver-decoder.js';
import type { DialogueEffect, DialogueEvent, Stepped } from './dialogue-types.js';
import { heardReading, readFrame } from './read-frame.js';

export interface StreamSetting {
  readonly decoder: MeterDecoder;
  readonly asked: Asked;
  readonly silentAfterS: number;
  /** Complete, with its line end. */
  readonly keepAwake: { readonly text: string; readonly everyS: number } | undefined;
}

export interface StreamState {
  readonly open: boolean;
  /** When something was heard last; the opening counts. */
  readonly heardAt: number;
  readonly silent: boolean;
  readonly faults: number;
  readonly awakeDueAt: number;
  /** Lines since `countedFrom`. */
  readonly lines: number;
  readonly countedFrom: number;
  /** Nothing is taken until the lines come at a meter's pace again. */
  readonly flooded: boolean;
}

/** Far above any meter, far below what would stall the program. */
const mostLinesPerS = 1000;
/** Over so long it is seen that a flood has ended; a stall of our own may bring a second's lines at once. */
const endSeenS = 0.1;

export const streamStart: StreamState = {
  open: false,
  heardAt: 0,
  silent: false,
  faults: 0,
  awakeDueAt: Number.POSITIVE_INFINITY,
  lines: 0,
  countedFrom: 0,
  flooded: false,
};

export const stepStream = (
  setting: StreamSetting,
  state: StreamState,
  event: DialogueEvent,
): Stepped<StreamState> => {
  if (event.event === 'opened') return opened(setting, event.t);
  if (!state.open) return { state, effects: [] };
  switch (event.event) {
    case 'lost':
      return { state: { ...state, open: false }, effects: [] };
    case 'frame':
      return heard(setting, state, event);
    case 'wake':
      return woken(setting, state, event.t);
  }
};

const opened = (setting: StreamSetting, t: number): Stepped<StreamState> => {
  const awakeDueAt = setting.keepAwake ? t : Number.POSITIVE_INFINITY;
  return woken(setting, { ...streamStart, open: true, heardAt: t, countedFrom: t, awakeDueAt }, t);
};

/** A line moves the moment of silence, not the wake: a wake that comes too early asks for the next one. */
const heard = (
  setting: StreamSetting,
  before: StreamState,
  { t, frame }: Extract<DialogueEvent, { event: 'frame' }>,
): Stepped<StreamState> => {
  const spanS = before.flooded ? endSeenS : 1;
  const isCounting = t - before.countedFrom < spanS;
  const lines = isCounting ? before.lines + 1 : 1;
  const countedFrom = isCounting ? before.countedFrom : t;
  const counted = { ...before, heardAt: t, lines, countedFrom };
  const isQuiet = t - before.heardAt >= endSeenS;
  const isOver = isQuiet || (!isCounting && before.lines <= mostLinesPerS * spanS);
  if (before.flooded ? !isOver : lines > mostLinesPerS) {
    const text = floodWords(mostLinesPerS);
    const effects: DialogueEffect[] = before.flooded
      ? []
      : [{ effect: 'says', t, says: 'error', text }];
    const from = before.flooded ? countedFrom : t;
    return { state: { ...counted, countedFrom: from, flooded: true }, effects };
  }
  const reading = readFrame(t, frame, setting.decoder, setting.asked);
  const { faults, effects } = heardReading(reading, before.faults);
  const state = { ...counted, faults, flooded: false, silent: false };
  if (!before.silent) return { state, effects };
  const watched = woken(setting, state, t);
  return { state: watched.state, effects: [...effects, ...watched.effects] };
};

const woken = (setting: StreamSetting, before: StreamState, t: number): Stepped<StreamState> => {
  const effects: DialogueEffect[] = [];
  let state = before;
  if (setting.keepAwake && t >= state.awakeDueAt) {
    effects.push({ effect: 'send', text: setting.keepAwake.text });
    state = { ...state, awakeDueAt: t + setting.keepAwake.everyS };
  }
  const silentAt = state.heardAt + setting.silentAfterS;
  if (!state.silent && t >= silentAt) {
    const text = silentWords(setting.silentAfterS);
    effects.push({ effect: 'says', t, says: 'no-answer', text });
    state = { ...state, silent: true };
  }
  const next = Math.min(state.silent ? Number.POSITIVE_INFINITY : silentAt, state.awakeDueAt);
  if (next < Number.POSITIVE_INFINITY) effects.push({ effect: 'wake', t: next });
  return { state, effects };
};

// Drives a meter by its driver's data, whichever way it talks. Pure: events with their times go in, what to
// send, when to be woken and what was read come out. Never hangs on a mute meter, and never takes a late
// answer for the answer to the next question.
import { compileDriver } from '../compile-driver.js';
import type { Driver } from '../driver-format.js';
import { type AskedSetting, type AskedState, askedStart } from './asked-state.js';
import {
  type DialogueEffect,
  DialogueError,
  type DialogueEvent,
  type Stepped,
  type Wanted,
} from './dialogue-types.js';
import { scriptFor } from './script.js';
import { stepAsked } from './step-asked.js';
import { type StreamSetting, type StreamState, stepStream, streamStart } from './step-stream.js';

export { type DialogueEffect, DialogueError, type DialogueEvent, type Wanted };

export type DialogueState =
  | { readonly talk: 'asked'; readonly setting: AskedSetting; readonly at: AskedState }
  | { readonly talk: 'stream'; readonly setting: StreamSetting; readonly at: StreamState };

/**
 * A dialogue that waits for its link to open.
 * @throws DialogueError when the driver cannot measure what is wanted.
 */
export const startDialogue = (driver: Driver, wanted: Wanted): DialogueState => {
  const measured = new Set(driver.accuracy.map((row) => row.function));
  if (!measured.has(wanted.function)) {
    throw new DialogueError(
      `driver ${driver.id} has no ${wanted.function}; it has ${[...measured].join(', ')}`,
    );
  }
  const decoder = compileDriver(driver);
  const { talk, wire } = driver;
  if (talk.style === 'stream') {
    const { keepAwake, silentAfterS } = talk;
    const awake = keepAwake && { text: keepAwake.send + wire.sendEnd, everyS: keepAwake.everyS };
    const asked = { function: wanted.function };
    return {
      talk: 'stream',
      setting: { decoder, asked, silentAfterS, keepAwake: awake },
      at: streamStart,
    };
  }
  const script = scriptFor(driver, wanted);
  const range = script.range === undefined ? {} : { range: script.range };
  const asked = { function: wanted.function, ...range };
  return { talk: 'asked', setting: { script, decoder, asked }, at: askedStart };
};

export const stepDialogue = (
  state: DialogueState,
  event: DialogueEvent,
): Stepped<DialogueState> => {
  if (state.talk === 'stream') {
    const { state: at, effects } = stepStream(state.setting, state.at, event);
    return { state: { ...state, at }, effects };
  }
  const { state: at, effects } = stepAsked(state.setting, state.at, event);
  return { state: { ...state, at }, effects };
};

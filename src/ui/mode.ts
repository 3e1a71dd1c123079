// What the screen is showing and what a key means there. Pure: a key and the walk's state give the next mode and
// what is to be done. Nothing is lost by any single key: leaving asks once more.
import type { Act } from '../core/inputs.js';
import { selectFindings } from '../core/select/findings.js';
import type { WalkState } from '../core/walk/state.js';
import type { ScreenAct } from '../core/words/screen-words.js';
import { editText } from './edit-text.js';
import { actOfKey, type KeyMap } from './keys/key-map.js';
import type { Key } from './keys/parse-keys.js';

export type Mode =
  | { readonly mode: 'walk' }
  | { readonly mode: 'keys' }
  | { readonly mode: 'leaving' }
  | { readonly mode: 'review'; readonly choice: number }
  | { readonly mode: 'go-to'; readonly text: string; readonly wrong: string | null }
  | { readonly mode: 'note'; readonly text: string; readonly pin: string | null };

export interface Step {
  readonly mode: Mode;
  readonly acts: readonly Act[];
  readonly repeat?: true;
}

const longestNote = 200;
const longestPin = 40;

const stay = (mode: Mode, ...acts: readonly Act[]): Step => ({ mode, acts });
export const walkMode: Mode = { mode: 'walk' };

export const pressKey = (mode: Mode, key: Key, state: WalkState, keys: KeyMap): Step => {
  switch (mode.mode) {
    case 'walk':
      // A finished walk shows its review, whichever way it came there.
      return state.stage === 'finished' && state.probing === null && state.alone === null
        ? inReview({ mode: 'review', choice: 0 }, key, state, keys)
        : inWalk(mode, key, state, keys);
    case 'keys':
      return stay(walkMode);
    case 'leaving':
      return actOfKey(keys, key.name) === 'quit' ? stay(mode, { act: 'quit' }) : stay(walkMode);
    case 'review':
      return inReview(mode, key, state, keys);
    case 'go-to':
      return inGoTo(mode, key, state);
    case 'note':
      return inNote(mode, key);
  }
};

const inWalk = (mode: Mode, key: Key, state: WalkState, keys: KeyMap): Step => {
  const act = actOfKey(keys, key.name);
  return act === null ? stay(mode) : carryOut(mode, act, state);
};

const carryOut = (mode: Mode, act: ScreenAct, state: WalkState): Step => {
  switch (act) {
    case 'quit':
      return state.stage === 'finished' ? stay(mode, { act: 'quit' }) : stay({ mode: 'leaving' });
    case 'review':
      return stay({ mode: 'review', choice: 0 });
    case 'keys':
      return stay({ mode: 'keys' });
    case 'go-to':
      return stay({ mode: 'go-to', text: '', wrong: null });
    case 'note':
      return stay({ mode: 'note', text: '', pin: state.plan.pins[state.cursor]?.pin ?? null });
    case 'pause':
      return stay(mode, { act: state.paused === 'asked' ? 'resume' : 'pause' });
    case 'repeat':
      return { ...stay(mode), repeat: true };
    case 'press': {
      const free = state.press?.free ?? null;
      // In a free test the key tells when the tool presses and when it lets go.
      if (free === null) return stay(mode, { act });
      return stay(mode, { act: free.pressing ? 'released' : 'pressing' });
    }
    case 'open':
    case 'next':
    case 'back':
    case 'skip':
    case 'retake':
    case 'probe':
    case 'dismiss':
    case 'zero':
    case 'reference':
      return stay(mode, { act });
  }
};

const inReview = (
  mode: Extract<Mode, { mode: 'review' }>,
  key: Key,
  state: WalkState,
  keys: KeyMap,
): Step => {
  const findings = selectFindings(state);
  const last = Math.max(0, findings.length - 1);
  const choice = Math.min(mode.choice, last);
  switch (key.name) {
    case 'up':
      return stay({ mode: 'review', choice: Math.max(0, choice - 1) });
    case 'down':
      return stay({ mode: 'review', choice: Math.min(last, choice + 1) });
    case 'home':
      return stay({ mode: 'review', choice: 0 });
    case 'end':
      return stay({ mode: 'review', choice: last });
    case 'escape':
      return state.stage === 'finished' ? stay(mode) : stay(walkMode);
    case 'enter': {
      const pin = state.plan.pins[findings[choice]?.index ?? -1]?.pin;
      return pin === undefined ? stay(mode) : stay(walkMode, { act: 'go-to', pin });
    }
  }
  const act = actOfKey(keys, key.name);
  if (act === 'review' && state.stage !== 'finished') return stay(walkMode);
  return act === null || act === 'review' ? stay(mode) : carryOut(walkMode, act, state);
};

const inGoTo = (mode: Extract<Mode, { mode: 'go-to' }>, key: Key, state: WalkState): Step => {
  if (isLeave(key)) return stay(walkMode);
  if (key.name === 'enter') {
    const wanted = mode.text.trim();
    if (wanted === '') return stay(walkMode);
    const exact = state.plan.pins.find(({ pin }) => pin === wanted);
    const found =
      exact ?? state.plan.pins.find(({ pin }) => pin.toLowerCase() === wanted.toLowerCase());
    return found === undefined
      ? stay({ mode: 'go-to', text: '', wrong: wanted })
      : stay(walkMode, { act: 'go-to', pin: found.pin });
  }
  return stay({ ...mode, wrong: null, text: editText(mode.text, key, longestPin) });
};

const inNote = (mode: Extract<Mode, { mode: 'note' }>, key: Key): Step => {
  if (isLeave(key)) return stay(walkMode);
  if (key.name !== 'enter') return stay({ ...mode, text: editText(mode.text, key, longestNote) });
  const text = mode.text.trim();
  if (text === '') return stay(walkMode);
  // The pin is the one at which the note was begun: the walk may have gone on while it was written.
  const at = mode.pin === null ? {} : { pin: mode.pin };
  return stay(walkMode, { act: 'note', text, ...at });
};

const isLeave = ({ name }: Key): boolean => name === 'escape' || name === 'ctrl+c';

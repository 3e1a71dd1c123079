// What a key means while a saved session is played. Lists and prompts work as in a walk; nothing can be changed,
// so nothing is asked before leaving. Pure.
import type { Control } from '../core/replay/control.js';
import { readGoal } from '../core/replay/read-goal.js';
import type { WalkState } from '../core/walk/state.js';
import type { ReplayAct } from '../core/words/replay-words.js';
import type { KeyMap } from './keys/key-map.js';
import type { Key } from './keys/parse-keys.js';
import { replayActOfKey, replayKeys } from './keys/replay-keys.js';
import { type Mode, pressKey, type Step, walkMode } from './mode.js';

export interface ReplayStep extends Step {
  readonly control: Control | null;
}

const seekS = 5;
/** In a list these keys move in it. */
const listKeys: ReadonlySet<string> = new Set(['up', 'down', 'enter', 'escape']);

const controls: Readonly<Partial<Record<ReplayAct, Control>>> = {
  pause: { control: 'pause-or-go-on' },
  'next-waymark': { control: 'to-next' },
  'previous-waymark': { control: 'to-previous' },
  ahead: { control: 'by-time', seconds: seekS },
  back: { control: 'by-time', seconds: -seekS },
  faster: { control: 'faster' },
  slower: { control: 'slower' },
  'step-on': { control: 'step-on' },
  'step-back': { control: 'step-back' },
  start: { control: 'to-start' },
  end: { control: 'to-end' },
};

export const pressReplayKey = (
  mode: Mode,
  key: Key,
  state: WalkState,
  keys: KeyMap,
): ReplayStep => {
  switch (mode.mode) {
    case 'go-to':
      return key.name === 'enter' ? inGoTo(mode, state) : walkKey(mode, key, state, keys);
    case 'keys':
    case 'note':
    case 'leaving':
      return walkKey(mode, key, state, keys);
    case 'review':
      return listKeys.has(key.name) ? walkKey(mode, key, state, keys) : inPlay(mode, key, keys);
    case 'walk':
      return isOver(state) && listKeys.has(key.name)
        ? walkKey({ mode: 'review', choice: 0 }, key, state, keys)
        : inPlay(mode, key, keys);
  }
};

const isOver = ({ stage }: WalkState): boolean => stage === 'finished' || stage === 'closed';

const walkKey = (mode: Mode, key: Key, state: WalkState, keys: KeyMap): ReplayStep => ({
  ...pressKey(mode, key, state, keys),
  control: null,
});

const inPlay = (mode: Mode, key: Key, keys: KeyMap): ReplayStep => {
  const stay: ReplayStep = { mode, acts: [], control: null };
  const act = replayActOfKey(replayKeys(keys), key.name);
  if (act === null) return stay;
  switch (act) {
    case 'quit':
      return { ...stay, acts: [{ act: 'quit' }] };
    case 'repeat':
      return { ...stay, repeat: true };
    case 'keys':
      return { ...stay, mode: { mode: 'keys' } };
    case 'review':
      return { ...stay, mode: mode.mode === 'review' ? walkMode : { mode: 'review', choice: 0 } };
    case 'go-to':
      return { ...stay, mode: { mode: 'go-to', text: '', wrong: null } };
    default:
      return { ...stay, control: controls[act] ?? null };
  }
};

const inGoTo = (mode: Extract<Mode, { mode: 'go-to' }>, state: WalkState): ReplayStep => {
  const done: ReplayStep = { mode: walkMode, acts: [], control: null };
  if (mode.text.trim() === '') return done;
  try {
    const pins = state.plan.pins.map(({ pin }) => pin);
    return { ...done, control: readGoal(mode.text, pins) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { ...done, mode: { mode: 'go-to', text: '', wrong: mode.text.trim() } };
  }
};

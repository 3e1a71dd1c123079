// Which keys do what while a saved session is played: where the walk has a key for something alike, the same one
// does it (a pedal for "next" goes to the next find), and moving in time is on the arrows. The key that leaves
// always does.
import { type ReplayAct, replayActs } from '../../core/words/replay-words.js';
import type { ScreenAct } from '../../core/words/screen-words.js';
import type { KeyMap } from './key-map.js';

export type ReplayKeyMap = Readonly<Record<ReplayAct, readonly string[]>>;

const ownKeys: Readonly<Partial<Record<ReplayAct, readonly string[]>>> = {
  ahead: ['right'],
  back: ['left'],
  faster: ['up', '+'],
  slower: ['down', '-'],
  'step-on': ['.'],
  'step-back': [','],
  start: ['home'],
  end: ['end'],
};

const alike: Readonly<Partial<Record<ReplayAct, ScreenAct>>> = {
  pause: 'pause',
  'next-waymark': 'next',
  'previous-waymark': 'back',
  'go-to': 'go-to',
  repeat: 'repeat',
  review: 'review',
  keys: 'keys',
  quit: 'quit',
};

export const replayKeys = (keys: KeyMap): ReplayKeyMap => {
  const taken = new Set(Object.values(ownKeys).flat());
  const namesOf = (act: ReplayAct): readonly string[] => {
    const own = ownKeys[act]?.filter((name) => !keys.quit.includes(name));
    if (own !== undefined) return own;
    const walks = alike[act];
    const names = walks === undefined ? [] : keys[walks];
    return act === 'quit' ? names : names.filter((name) => !taken.has(name));
  };
  return Object.fromEntries(
    replayActs.map((act) => [act, namesOf(act)]),
  ) as unknown as ReplayKeyMap;
};

export const replayActOfKey = (map: ReplayKeyMap, name: string): ReplayAct | null =>
  replayActs.find((act) => map[act].includes(name)) ?? null;

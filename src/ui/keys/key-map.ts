// Which keys do what. Data: a file or the learner may replace any entry. Keys that move in a list or edit a
// line are fixed, and no key that a terminal sends by accident is bound to anything that cannot be undone.
import { type ScreenAct, screenActs } from '../../core/words/screen-words.js';

export type KeyMap = Readonly<Record<ScreenAct, readonly string[]>>;

export const usualKeys: KeyMap = {
  open: ['o'],
  next: ['n', 'enter'],
  back: ['b', 'left'],
  skip: ['s'],
  retake: ['r'],
  press: ['t'],
  probe: ['f'],
  'go-to': ['g'],
  note: ['w'],
  zero: ['z'],
  reference: ['e'],
  pause: ['p', 'space'],
  dismiss: ['d'],
  repeat: ['c'],
  review: ['v'],
  keys: ['?'],
  quit: ['q', 'ctrl+c'],
};

/** An escape may be half of another key; it never does anything by itself. */
const never: ReadonlySet<string> = new Set(['escape', 'paste']);

/**
 * The usual keys with the given ones in their place. A key moves to the act it is given to.
 * @throws RangeError for an act that does not exist, a key that may not be bound or is given to two acts, and
 * when nothing is left to quit with.
 */
export const keyMapWith = (given: Readonly<Record<string, readonly string[]>>): KeyMap => {
  const taken = new Map<string, string>();
  for (const [act, names] of Object.entries(given)) {
    if (!screenActs.some((known) => known === act)) {
      throw new RangeError(`there is no act "${act}"; acts are ${screenActs.join(', ')}`);
    }
    for (const name of names) {
      if (never.has(name)) throw new RangeError(`the key "${name}" cannot be bound (${act})`);
      const other = taken.get(name);
      if (other !== undefined && other !== act) {
        throw new RangeError(`the key "${name}" is given to ${other} and to ${act}`);
      }
      taken.set(name, act);
    }
  }
  const map = Object.fromEntries(
    screenActs.map((act) => [act, given[act] ?? usualKeys[act].filter((name) => !taken.has(name))]),
  ) as Record<ScreenAct, readonly string[]>;
  if (map.quit.length === 0) throw new RangeError('no key is left to quit with');
  return map;
};

export const actOfKey = (map: KeyMap, name: string): ScreenAct | null =>
  screenActs.find((act) => map[act].includes(name)) ?? null;

/** The key to show for an act, or null when it has none. */
export const shownKey = (map: KeyMap, act: ScreenAct): string | null => map[act][0] ?? null;

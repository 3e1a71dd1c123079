// What every part of the screen needs and none changes.
import { createContext, useContext } from 'react';
import type { Profile } from '../core/profile/profile-format.js';
import type { Words } from '../core/words/words.js';
import type { KeyMap } from './keys/key-map.js';
import type { Theme } from './theme.js';

export interface Surroundings {
  readonly words: Words;
  readonly theme: Theme;
  readonly keys: KeyMap;
  /** Null where the caller knows no more than the walk's plan. */
  readonly profile: Profile | null;
  readonly simulated: boolean;
}

export const SurroundingsContext = createContext<Surroundings | null>(null);

/** @throws Error outside the screen. */
export const useSurroundings = (): Surroundings => {
  const found = useContext(SurroundingsContext);
  if (found === null) throw new Error('a part of the screen was drawn outside the screen');
  return found;
};

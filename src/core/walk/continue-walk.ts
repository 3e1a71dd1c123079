// The walk goes on after a pause, where it stood.
import { pressAnew } from './press.js';
import { cursorPin } from './state.js';
import type { Teller } from './teller.js';

export const continueWalk = (teller: Teller, t: number): void => {
  const pin = cursorPin(teller.state)?.pin ?? '';
  teller.tell({ type: 'walk-continued', t, pin });
  pressAnew(teller, t);
};

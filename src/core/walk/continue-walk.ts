// The walk goes on after a pause, where it stood.
import { pressAnew } from './press.js';
import type { Teller } from './teller.js';
import { cursorPin } from './whereabouts.js';

export const continueWalk = (teller: Teller, t: number): void => {
  const pin = cursorPin(teller.state)?.pin ?? '';
  teller.tell({ type: 'walk-continued', t, pin });
  pressAnew(teller, t);
};

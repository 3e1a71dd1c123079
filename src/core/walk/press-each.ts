// In a session that asks for it, every line that is settled and not normal is press-tested, as soon as no touch
// is in doubt: a test in between would hide whether the probe went on.
import { beginPressTest } from './press.js';
import type { Teller } from './teller.js';

export const pressEachBadLine = (teller: Teller, t: number): void => {
  const { press, pressDue, pending, probing, stage } = teller.state;
  const [pin] = pressDue;
  if (press !== null || probing !== null || pin === undefined) return;
  if (pending.length === 0 || stage === 'finished') beginPressTest(teller, t, pin);
};

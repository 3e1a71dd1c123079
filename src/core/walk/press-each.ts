// In a session that asks for it, every line that is settled and not normal is press-tested at once.
import type { Verdict } from '../events.js';
import { beginPressTest } from './press.js';
import { pinReadLast } from './state.js';
import type { Teller } from './teller.js';

export const pressEachBadLine = (teller: Teller, t: number): void => {
  const { state, events } = teller;
  if (!state.pressEach || state.press !== null) return;
  const judged = events.findLast((event) => event.type === 'pin-judged');
  if (judged?.agreed !== true || !pressable.has(judged.verdict)) return;
  if (pinReadLast(state)?.pin === judged.pin) beginPressTest(teller, t);
};

const pressable: ReadonlySet<Verdict> = new Set(['open', 'low', 'high', 'short', 'wobble']);

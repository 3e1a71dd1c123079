// Which pins a session that press-tests every bad line still has to come to. A verdict told late, when the probe is
// on another pin already, is not forgotten: the test calls back to its pin.
import type { EventOf, Verdict } from '../events.js';
import type { WalkState } from './state.js';

/** The pins still to be press-tested after a verdict, oldest first. */
export const pressDueAfter = (
  { pressEach, pressDue }: WalkState,
  { pin, verdict, agreed }: EventOf<'pin-judged'>,
): readonly string[] => {
  if (!pressEach) return pressDue;
  const others = pressDue.filter((due) => due !== pin);
  if (agreed && pressable.has(verdict)) return [...others, pin];
  return others.length === pressDue.length ? pressDue : others;
};

const pressable: ReadonlySet<Verdict> = new Set(['open', 'low', 'high', 'short', 'wobble']);

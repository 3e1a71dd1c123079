// Which pins a session that press-tests every bad line still has to come to. A verdict told late, when the probe is
// on another pin already, is not forgotten: the test calls back to its pin.
import type { EventOf } from '../events.js';
import type { Verdict } from '../verdict.js';
import type { WalkState } from './state.js';

/** The pins still to be press-tested after a verdict, oldest first. */
export const pressDueAfter = (
  state: WalkState,
  judged: EventOf<'pin-judged'>,
): readonly string[] => {
  const { pressEach, pressDue } = state;
  const { pin, verdict, agreed } = judged;
  const again = isPressedAgain(state, judged);
  if (!pressEach && !again) return pressDue;
  const others = pressDue.filter((due) => due !== pin);
  if (agreed && (again || pressable.has(verdict))) return [...others, pin];
  return others.length === pressDue.length ? pressDue : others;
};

const pressable: ReadonlySet<Verdict> = new Set(['open', 'low', 'high', 'short', 'wobble']);

/** A line of a recheck that answered to pressing before: it has to stay put now, however well it reads. */
const isPressedAgain = (
  { recheck, presses }: WalkState,
  { line, verdict }: EventOf<'pin-judged'>,
): boolean =>
  recheck !== null &&
  verdict !== 'unread' &&
  recheck.press.some((place) => place.line === line) &&
  !presses.some((press) => press.line === line);

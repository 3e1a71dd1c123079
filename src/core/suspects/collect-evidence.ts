// Evidence from the events of a session: the last verdict of each pin and the last finding of each press, in the
// order in which they were given.
import type { WalkEvent } from '../events.js';
import type { Evidence, Observation } from './evidence.js';

/**
 * What was judged again counts once, at its new place in the order: a lead may have been mended since. A press on
 * bare board is one of a part that no line has: an answer to it tells that the board flexes.
 */
export const collectEvidence = (events: Iterable<WalkEvent>): Evidence => {
  const seen = new Map<string, Observation>();
  const see = (key: string, observation: Observation): void => {
    seen.delete(key);
    seen.set(key, observation);
  };
  for (const event of events) {
    if (event.type === 'pin-judged') {
      const { pin, verdict } = event;
      see(`pin ${pin}`, { kind: 'pin', pin, verdict });
    } else if (event.type === 'press-judged') {
      const { line, part, finding } = event;
      see(`press ${line} ${part}`, { kind: 'press', line, part, finding });
    }
  }
  return [...seen.values()];
};

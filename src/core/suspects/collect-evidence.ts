// Evidence from the events of a session: the last verdict of each pin, in the order in which they were given.
import type { Verdict, WalkEvent } from '../events.js';
import type { Evidence } from './evidence.js';

/** A pin judged again counts once, at its new place in the order: a lead may have been mended since. */
export const collectEvidence = (events: Iterable<WalkEvent>): Evidence => {
  const judged = new Map<string, Verdict>();
  for (const event of events) {
    if (event.type !== 'pin-judged') continue;
    judged.delete(event.pin);
    judged.set(event.pin, event.verdict);
  }
  return [...judged].map(([pin, verdict]) => ({ kind: 'pin', pin, verdict }));
};

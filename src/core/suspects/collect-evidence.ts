// Evidence from the events of a session: the last verdict of each pin and the last finding of each press, in the
// order in which they were given.
import type { WalkEvent } from '../events.js';
import type { Evidence, Observation } from './evidence.js';

/**
 * The evidence with one more event. What was judged again counts once, at its new place in the order: a lead may
 * have been mended since. A press on bare board is one of a part that no line has: an answer to it tells that the
 * board flexes.
 */
export const observe = (evidence: Evidence, event: WalkEvent): Evidence => {
  const observation = observationIn(event);
  if (observation === null) return evidence;
  const place = placeOf(observation);
  return [...evidence.filter((known) => placeOf(known) !== place), observation];
};

export const collectEvidence = (events: Iterable<WalkEvent>): Evidence => {
  let evidence: Evidence = [];
  for (const event of events) evidence = observe(evidence, event);
  return evidence;
};

const observationIn = (event: WalkEvent): Observation | null => {
  if (event.type === 'pin-judged') {
    const { pin, verdict } = event;
    return { kind: 'pin', pin, verdict };
  }
  if (event.type === 'press-judged') {
    const { line, part, finding } = event;
    return { kind: 'press', line, part, finding };
  }
  return null;
};

const placeOf = (observation: Observation): string => {
  switch (observation.kind) {
    case 'pin':
      return `pin ${observation.pin}`;
    case 'press':
      return `press ${observation.line} ${observation.part}`;
    case 'place':
      return `place ${observation.line} ${JSON.stringify(observation.place)}`;
  }
};

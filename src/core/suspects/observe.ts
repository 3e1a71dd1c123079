// Evidence from the events of a session: the last verdict of each pin and place and the last finding of each press,
// in the order in which they were given.
import type { EventOf, WalkEvent } from '../events.js';
import type { Evidence, Observation } from './evidence.js';
import type { Place } from './views.js';

/**
 * The evidence with one more event. What was read again counts once, at its new place in the order: a lead may have
 * been mended since. What was only judged anew stays where it was read. A probe beside the walk is a look of its own
 * and counts beside what was seen before. A press on bare board is one of a part that no line has: an answer to it
 * tells that the board flexes.
 */
export const observe = (
  evidence: Evidence,
  event: WalkEvent,
  probing: EventOf<'probe-begun'> | null = null,
): Evidence => {
  const observation = observationIn(event, probing);
  if (observation === null) return evidence;
  const isAnew = event.type === 'pin-judged' && event.anew === true;
  if (event.type !== 'press-judged' && probing !== null && !isAnew) {
    return [...evidence, observation];
  }
  const place = placeOf(observation);
  if (isAnew) {
    return evidence.map((known) => (placeOf(known) === place ? observation : known));
  }
  return [...evidence.filter((known) => placeOf(known) !== place), observation];
};

const observationIn = (
  event: WalkEvent,
  probing: EventOf<'probe-begun'> | null,
): Observation | null => {
  if (event.type === 'pin-judged') {
    const { pin, verdict } = event;
    const clipMoved = probing?.probe === 'other-ground';
    return { kind: 'pin', pin, verdict, ...(clipMoved ? { clipMoved } : {}) };
  }
  if (event.type === 'place-judged') {
    const { line, part, side, verdict } = event;
    const place: Place = side === 'chip' || part === null ? { side: 'chip' } : { side, part };
    return { kind: 'place', line, place, verdict };
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

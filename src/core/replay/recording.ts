// A saved session as replay needs it: the walk's state at regular places, and a way to the events between them.
// Because states never change, going anywhere is folding from the place before it. Holds no events itself.
import type { EventOf, Numbered } from '../events.js';
import { foldStored } from '../walk/fold-stored.js';
import type { WalkState } from '../walk/state.js';
import type { Waymark } from './waymark.js';

/** Events between two places whose state is kept. */
export const stretchEvents = 2048;

export interface Checkpoint {
  /** Before the stretch's first event. */
  readonly state: WalkState;
  /** Time of the latest event before, in seconds. */
  readonly t: number;
}

export interface Recording {
  readonly opened: EventOf<'session-opened'>;
  /** Events there are; a place in the recording is how many of them have happened, 0 to this. */
  readonly count: number;
  readonly startT: number;
  readonly endT: number;
  readonly endState: WalkState;
  /** One for each stretch. */
  readonly checkpoints: readonly Checkpoint[];
  readonly waymarks: readonly Waymark[];
  /** Where each pin is about to be waited for, the first time: how many events have happened then. */
  readonly reached: ReadonlyMap<string, number>;
  /** The events of a stretch, in order. @throws when they are no longer what they were. */
  stretch(index: number): readonly Numbered[];
}

/** A place and what the walk knows there. */
export interface Place {
  readonly at: number;
  readonly state: WalkState;
  /** Time of the latest event; never falls from one place to the next. */
  readonly t: number;
}

/** The event that happens next at a place, or null at the end. */
export const eventAt = (recording: Recording, at: number): Numbered | null => {
  if (at >= recording.count) return null;
  return recording.stretch(Math.floor(at / stretchEvents))[at % stretchEvents] ?? null;
};

export const goOn = (place: Place, event: Numbered): Place => ({
  at: place.at + 1,
  state: foldStored(place.state, event),
  t: Math.max(place.t, event.t),
});

/** The place where `at` events have happened. Outside the recording it is its beginning or end. */
export const placeAt = (recording: Recording, at: number): Place => {
  const { count, endState, endT } = recording;
  if (at >= count) return { at: count, state: endState, t: endT };
  const target = Math.max(0, Math.trunc(at));
  let place = checkpoint(recording, Math.floor(target / stretchEvents));
  for (const event of recording.stretch(Math.floor(target / stretchEvents))) {
    if (place.at === target) break;
    place = goOn(place, event);
  }
  return place;
};

/** The place where everything up to and with `t` has happened. */
export const placeAtTime = (recording: Recording, t: number): Place => {
  const { count, endT, endState, checkpoints } = recording;
  if (t >= endT) return { at: count, state: endState, t: endT };
  let low = 0;
  for (let high = checkpoints.length - 1; low < high; ) {
    const middle = Math.ceil((low + high) / 2);
    if ((checkpoints[middle]?.t ?? Infinity) <= t) low = middle;
    else high = middle - 1;
  }
  let place = checkpoint(recording, low);
  for (const event of recording.stretch(low)) {
    if (event.t > t) break;
    place = goOn(place, event);
  }
  return place;
};

const checkpoint = ({ checkpoints, endState, endT }: Recording, index: number): Place => {
  const { state, t } = checkpoints[index] ?? { state: endState, t: endT };
  return { at: index * stretchEvents, state, t };
};

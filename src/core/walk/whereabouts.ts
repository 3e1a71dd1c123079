// Where the walk is, as far as its state tells: the pin it waits for, has in reach, read last or probes.
import type { EventOf } from '../events.js';
import type { PlannedPin } from '../profile/plan.js';
import type { WalkState } from './state.js';
import { type Way, waitsFor } from './ways.js';

/** The likeliest way the captures lie along the connector. */
export const likeliestWay = (state: WalkState): Way => state.alignment[0] as Way;

/** The pin that a reading most probably belongs to, or whose line it does; undefined past the last. */
export const pinInReach = (state: WalkState): PlannedPin | undefined =>
  state.probing === null
    ? state.plan.pins[waitsFor(likeliestWay(state))]
    : probedPin(state, state.probing);

/** The pin the walk waits for, or undefined when all are done. */
export const cursorPin = (state: WalkState): PlannedPin | undefined =>
  state.plan.pins[state.cursor];

/** The pin that was read last, on which a press test would be made; undefined before the first. */
export const pinReadLast = (state: WalkState): PlannedPin | undefined => {
  const way = likeliestWay(state);
  return way.book === null ? undefined : state.plan.pins[way.index];
};

/** The pin whose line is probed: what is expected of it is expected along the line. */
export const probedPin = (
  { plan }: Pick<WalkState, 'plan'>,
  { line, pin }: Pick<EventOf<'probe-begun'>, 'line' | 'pin'>,
): PlannedPin | undefined =>
  plan.pins.find((planned) => planned.line === line && (pin ?? planned.pin) === planned.pin);

export const indexOfPin = (state: WalkState, pin: string): number =>
  state.plan.pins.findIndex((planned) => planned.pin === pin);

// Recordings in memory for tests: a walk on the virtual bench, and sessions put together by hand, with the state
// after every event folded the plain way.

import type { EventOf, Numbered, WalkEvent } from '../../../src/core/events.js';
import { indexSession } from '../../../src/core/replay/index-session.js';
import { type Recording, stretchEvents } from '../../../src/core/replay/recording.js';
import { evolve } from '../../../src/core/walk/evolve.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { openedWith, walkOnBench } from '../../bench/support/live-walk.js';
import { shippedProfile } from '../../bench/support/profile-files.js';
import { shippedDriver } from '../../support/driver-files.js';

export interface Recorded {
  readonly events: readonly Numbered[];
  readonly recording: Recording;
  /** The state where so many events have happened. */
  readonly states: readonly WalkState[];
}

export const recorded = (events: readonly Numbered[]): Recorded => {
  const opened = events[0];
  if (opened?.type !== 'session-opened') throw new Error('a session begins with its header');
  const index = indexSession(opened);
  for (const event of events) index.take(event);
  const states: WalkState[] = [openWalk(opened)];
  for (const event of events) states.push(evolve(states.at(-1) as WalkState, event));
  const recording = index.done((stretch) =>
    events.slice(stretch * stretchEvents, (stretch + 1) * stretchEvents),
  );
  return { events, recording, states };
};

export const profile = shippedProfile('demo');
export const driver = shippedDriver('stream-fields-flags');
export const opened: EventOf<'session-opened'> = openedWith(driver, profile);

/** Six thousand events of a walk with opens, questions and a leaky line. */
export const recordedWalk = (): Recorded =>
  recorded(walkOnBench({ driver, profile, bench: { rate: 50, seed: 2 } }).events);

export const numbered = (events: readonly WalkEvent[]): Numbered[] =>
  events.map((event, seq) => ({ seq, ...event }));

export const overload = (t: number): WalkEvent => ({
  type: 'reading-taken',
  t,
  function: 'resistance',
  overload: true,
});

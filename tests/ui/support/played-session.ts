// A saved session being played in stepped time, for the screen and for lines.
import { replaySession } from '../../../src/session/replay-session.js';
import { createSteppedClock } from '../../bench/support/stepped-clock.js';
import { liveSession } from '../../core/replay/live-session.js';
import { recorded } from '../../core/replay/recorded-walk.js';

export const played = recorded(liveSession({ bench: { scenario: 'demo', seed: 3 } }).events);

export const playedSession = (speed = 1) => {
  const clock = createSteppedClock();
  const { recording } = played;
  return { clock, session: replaySession({ recording, clock, speed, closeAtEnd: false }) };
};

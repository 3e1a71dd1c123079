// A live session on the virtual bench in stepped time, its events kept in memory: what a replay is held against.
import { type BenchName, usualBench } from '../../../src/bench/bench-name.js';
import { benchSetup } from '../../../src/bench/bench-setup.js';
import { createVirtualLink } from '../../../src/bench/virtual-link.js';
import type { Numbered, WalkEvent } from '../../../src/core/events.js';
import type { Act } from '../../../src/core/inputs.js';
import { beginWalk } from '../../../src/core/walk/decide.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { createMeterFeed } from '../../../src/session/meter-feed.js';
import { type RunningSession, runSession } from '../../../src/session/run-session.js';
import { createSteppedClock } from '../../bench/support/stepped-clock.js';
import { driver, opened, profile } from './recorded-walk.js';

export interface LiveSession {
  readonly events: readonly Numbered[];
  readonly state: WalkState;
  readonly finished: boolean;
}

export interface LiveOptions {
  readonly bench?: Partial<BenchName>;
  readonly groundCheck?: boolean;
  readonly pressTests?: 'asked' | 'each';
  /** What the technician does beside probing, by session time in seconds. */
  readonly acts?: readonly (readonly [t: number, act: Act])[];
  readonly patienceS?: number;
}

export const liveSession = (options: LiveOptions = {}): LiveSession => {
  const { bench = {}, groundCheck = true, pressTests = 'asked', acts = [] } = options;
  const clock = createSteppedClock();
  let running: RunningSession | null = null;
  const setup = benchSetup({
    bench: { ...usualBench, rate: 10, ...bench },
    driver,
    profile,
    hears: true,
    act: (act) => running?.act(act),
  });
  const link = createVirtualLink('virtual', setup, clock);
  const events: Numbered[] = [];
  const append = (told: readonly WalkEvent[]): readonly Numbered[] => {
    const written = told.map((event, at) => ({ seq: events.length + at, ...event }));
    events.push(...written);
    return written;
  };
  const header = { ...opened, groundCheck, pressTests, seed: 7 };
  const { state, events: first } = beginWalk(openWalk(header));
  const begun = append([header, ...first]);
  const session = runSession({
    state,
    journal: { append, sync: () => undefined, fingerprint: '', close: async () => undefined },
    feed: createMeterFeed({
      link,
      driver: setup.driver,
      wanted: { function: profile.measure.function },
      clock,
    }),
    clock,
    sessionTime: (t) => t,
    closeWhenFinished: false,
    writePatienceS: 1,
  });
  running = session;
  for (const event of begun) link.hear(event);
  session.follow(link.hear);
  for (const [t, act] of acts) clock.after(t, () => session.act(act));
  session.start();
  clock.run(options.patienceS ?? 600, () => session.state.stage === 'finished');
  const finished = session.state.stage === 'finished';
  session.act({ act: 'quit' });
  return { events, state: session.state, finished };
};

/** The state as it is whether its events bear numbers, as those of a file do, or not, as live ones. */
export const withoutNumbers = (state: WalkState): unknown => strip(state);

const strip = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(strip);
  if (value instanceof Map) return new Map([...value].map(([key, held]) => [key, strip(held)]));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => key !== 'seq')
      .map(([key, held]) => [key, strip(held)]),
  );
};

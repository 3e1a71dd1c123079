// A running session on the virtual bench with its events kept in memory: what a screen needs, without files.
import { readFileSync } from 'node:fs';
import { type BenchName, usualBench } from '../../../src/bench/bench-name.js';
import { benchSetup } from '../../../src/bench/bench-setup.js';
import { createVirtualLink } from '../../../src/bench/virtual-link.js';
import type { Numbered, WalkEvent } from '../../../src/core/events.js';
import type { Act } from '../../../src/core/inputs.js';
import type { Driver } from '../../../src/core/meter/driver-format.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { beginWalk } from '../../../src/core/walk/decide.js';
import { driverAccuracy, openSession } from '../../../src/core/walk/open-session.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import type { WalkState } from '../../../src/core/walk/state.js';
import { createMeterFeed } from '../../../src/session/meter-feed.js';
import type { Clock } from '../../../src/session/ports.js';
import { type RunningSession, runSession } from '../../../src/session/run-session.js';
import { createSteppedClock, type SteppedClock } from '../../bench/support/stepped-clock.js';

const readJson = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8'));

export const demoProfile = readJson('profiles/demo.json') as Profile;
export const streamDriver = readJson('drivers/stream-fields-flags.json') as Driver;

export interface BenchSession {
  readonly session: RunningSession;
  readonly events: readonly Numbered[];
}

export const benchSession = (
  clock: Clock,
  bench: Partial<BenchName> = {},
  pressTests: 'asked' | 'each' = 'asked',
): BenchSession => {
  const events: Numbered[] = [];
  let running: RunningSession | null = null;
  const setup = benchSetup({
    bench: { ...usualBench, ...bench },
    driver: streamDriver,
    profile: demoProfile,
    hears: true,
    act: (act: Act) => running?.act(act),
  });
  const link = createVirtualLink('virtual', setup, clock);
  const { function: measure } = demoProfile.measure;
  const opened = openSession({
    profile: { content: demoProfile, sha256: '' },
    driver: { id: streamDriver.id, sha256: '' },
    accuracy: driverAccuracy(streamDriver, measure),
    measure: demoProfile.measure,
    link: 'virtual:demo',
    simulated: true,
    groundCheck: true,
    seed: 7,
    pressTests,
    ...(bench.donor === true ? { donor: 'beside' as const } : {}),
    wallTime: null,
    zone: null,
  });
  const append = (told: readonly WalkEvent[]): readonly Numbered[] => {
    const numbered = told.map((event, at) => ({ seq: events.length + at, ...event }));
    events.push(...numbered);
    return numbered;
  };
  const { state, events: first } = beginWalk(openWalk(opened));
  append([opened, ...first]);
  running = runSession({
    state,
    journal: { append, sync: () => undefined, fingerprint: '', close: async () => undefined },
    feed: createMeterFeed({ link, driver: setup.driver, wanted: { function: measure }, clock }),
    clock,
    sessionTime: (t) => t,
    closeWhenFinished: false,
    writePatienceS: 15,
  });
  running.follow(link.hear);
  return { session: running, events };
};

export interface SteppedBench extends BenchSession {
  readonly clock: SteppedClock;
  /** Runs on until `done`, and says whether it came to that within `patienceS` simulated seconds. */
  until(done: (state: WalkState) => boolean, patienceS?: number): boolean;
}

/** The same in stepped time: a test runs it to the moment it looks at. */
export const steppedBench = (
  bench: Partial<BenchName> = {},
  pressTests: 'asked' | 'each' = 'asked',
): SteppedBench => {
  const clock = createSteppedClock();
  const made = benchSession(clock, bench, pressTests);
  made.session.start();
  return {
    ...made,
    clock,
    until(done, patienceS = 300) {
      clock.run(clock.now() + patienceS, () => done(made.session.state));
      return done(made.session.state);
    },
  };
};

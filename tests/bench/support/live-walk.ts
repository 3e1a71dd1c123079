// A whole walk on the virtual bench in stepped time: link, feed, decider and technician, without files or screen.
import type { BenchName } from '../../../src/bench/bench-name.js';
import { usualBench } from '../../../src/bench/bench-name.js';
import { benchSetup } from '../../../src/bench/bench-setup.js';
import { benchPads, learnedFrom } from '../../../src/bench/pads.js';
import { createVirtualLink, type VirtualLink } from '../../../src/bench/virtual-link.js';
import type { VirtualMeterSetup } from '../../../src/bench/virtual-meter.js';
import type { EventOf, Numbered, WalkEvent } from '../../../src/core/events.js';
import type { Input } from '../../../src/core/inputs.js';
import type { Driver } from '../../../src/core/meter/driver-format.js';
import type { Pad } from '../../../src/core/pads/pad.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import type { RecheckHeader } from '../../../src/core/recheck/recheck-header.js';
import type { Verdict } from '../../../src/core/verdict.js';
import { beginWalk, decide } from '../../../src/core/walk/decide.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import { createMeterFeed } from '../../../src/session/meter-feed.js';
import { createSteppedClock } from './stepped-clock.js';

export interface LiveWalk {
  readonly events: readonly Numbered[];
  readonly inputs: readonly Input[];
  readonly link: VirtualLink;
  readonly finished: boolean;
  readonly tookS: number;
}

export interface LiveWalkOptions {
  readonly driver: Driver;
  readonly profile: Profile;
  readonly bench?: Partial<BenchName>;
  /** Changes to the set-up that the bench's name gives. */
  readonly setup?: Partial<VirtualMeterSetup>;
  readonly hears?: boolean;
  /** Press-tests every line that is not normal. */
  readonly pressEach?: boolean;
  /** Listens to the reply pads of this profile and meter, whether the technician uses them or not. */
  readonly pads?: boolean;
  /** Simulated seconds for which the bench goes on when all is walked. */
  readonly afterwardsS?: number;
  /** The session is this press test and no walk. */
  readonly pressAlone?: EventOf<'session-opened'>['pressAlone'];
  /** Told with the opening: what is done with the leads, and on what part. */
  readonly opening?: Pick<Partial<EventOf<'session-opened'>>, 'ready' | 'reference' | 'donor'>;
  /** Simulated seconds after which the walk is given up. */
  readonly patienceS?: number;
  /** Walks again what an earlier walk put in question. */
  readonly recheck?: RecheckHeader;
}

export const openedWith = (driver: Driver, profile: Profile): EventOf<'session-opened'> => ({
  type: 'session-opened',
  t: 0,
  format: 'pinwalk-session/1',
  program: 'test',
  wallTime: null,
  zone: null,
  link: 'virtual',
  simulated: true,
  profile: { id: profile.id, sha256: '', content: profile },
  driver: { id: driver.id, sha256: '' },
  measure: { function: profile.measure.function, polarity: profile.measure.polarity },
  accuracy: {
    from: 'driver',
    fullScaleCounts: driver.displayCounts,
    rows: driver.accuracy
      .filter((row) => row.function === profile.measure.function)
      .map(({ fullScale, resolution, percent, counts }) => ({
        fullScale,
        resolution,
        percent,
        counts,
      })),
  },
  groundCheck: true,
});

export const walkOnBench = (options: LiveWalkOptions): LiveWalk => {
  const { profile, hears = true } = options;
  const clock = createSteppedClock();
  const bench = { ...usualBench, ...options.bench };
  const inputs: Input[] = [];
  const acts: (input: Input) => void = (input) => take(input);
  const setup = {
    ...benchSetup({
      bench,
      driver: options.driver,
      profile,
      pins: options.recheck?.pins.map(({ pin }) => pin),
      hears,
      act: (act) => acts({ kind: 'act', t: clock.now(), act }),
    }),
    ...options.setup,
  };
  const link = createVirtualLink('virtual', setup, clock);
  const { driver } = setup;
  const events: Numbered[] = [];
  const opened = {
    ...openedWith(driver, profile),
    ...options.opening,
    ...(options.pads === true ? { pads: padsOf(setup) } : {}),
    ...(options.pressAlone === undefined
      ? {}
      : { seed: 7, groundCheck: false, pressAlone: options.pressAlone }),
    ...(options.pressEach === true ? ({ seed: 7, pressTests: 'each' } as const) : {}),
    ...(options.recheck === undefined
      ? {}
      : { recheck: options.recheck, pins: options.recheck.pins.map(({ pin }) => pin), seed: 7 }),
  };

  const follow = (told: readonly WalkEvent[]): void => {
    for (const event of told) {
      const numbered: Numbered = { seq: events.length, ...event };
      events.push(numbered);
      if (hears) link.hear(numbered);
    }
  };

  let { state, events: first } = beginWalk(openWalk(opened));
  const take = (input: Input): void => {
    inputs.push(input);
    const decision = decide(state, input);
    state = decision.state;
    follow(decision.events);
  };
  follow([opened, ...first]);
  const wanted = {
    function: profile.measure.function,
    ...(profile.measure.range === undefined ? {} : { range: profile.measure.range }),
  };
  createMeterFeed({ link, driver, wanted, clock }).start(take);
  clock.run(
    options.patienceS ?? 600,
    () => state.stage === 'finished' && (state.press === null || options.recheck === undefined),
  );
  if (options.afterwardsS !== undefined) clock.run(options.afterwardsS, () => false);
  return {
    events,
    inputs,
    link,
    finished: state.stage === 'finished',
    tookS: clock.now(),
  };
};

const padsOf = (setup: VirtualMeterSetup): Pad[] => {
  const { profile, driver, measure, pads, seed } = setup;
  const lying = pads.length > 0 ? pads : benchPads(profile, driver, measure, seed);
  return [...learnedFrom(lying, setup)];
};

/** The last verdict of every pin. */
export const verdictsOf = (events: readonly WalkEvent[]): ReadonlyMap<string, Verdict> =>
  new Map(
    events
      .filter((event) => event.type === 'pin-judged')
      .map((event) => [event.pin, event.verdict] as const),
  );

/** Captures that carry another pin's name than the one under the probe; an answered open is none. */
export const misnamed = ({ events, link }: LiveWalk): string[] =>
  events
    .filter((event) => event.type === 'pin-settled')
    .filter((event) => event.overload !== true && link.pinAt(event.to) !== event.pin)
    .map((event) => `${event.pin} was ${link.pinAt(event.to) ?? 'air'} at ${event.to}`);

// The source of readings that `--link` asks for, with what goes on the session file's first line about it.
import { type BenchName, BenchNameError, parseBenchName } from '../bench/bench-name.js';
import { benchSetup } from '../bench/bench-setup.js';
import { learnedFrom } from '../bench/pads.js';
import { createVirtualLink } from '../bench/virtual-link.js';
import type { Act } from '../core/inputs.js';
import type { Driver } from '../core/meter/driver-format.js';
import type { Pad } from '../core/pads/pad.js';
import type { DonorWay } from '../core/profile/donor.js';
import type { Profile } from '../core/profile/profile-format.js';
import { english } from '../core/words/english.js';
import { LinkNameError, parseLinkName } from '../link/link-name.js';
import { createLogFeed, type Pace } from '../link/log-feed.js';
import { openLink } from '../link/open-link.js';
import { createStdinLink } from '../link/stdin-link.js';
import { createTypedFeed } from '../link/typed-feed.js';
import { createMeterFeed } from '../session/meter-feed.js';
import type { Clock, Feed, Follower } from '../session/ports.js';
import { exitCodes, UserError } from './user-error.js';

export interface FeedWish {
  readonly link: string;
  readonly profile: Profile;
  /** The only pins walked; absent: all. */
  readonly pins?: readonly string[] | undefined;
  /** A donor lies beside the board. */
  readonly donor?: DonorWay | undefined;
  readonly measure: Profile['measure'];
  /** The driver asked for, or null. */
  readonly driver: Driver | null;
  readonly clock: Clock;
  /** Wait for a device that is not there yet. */
  readonly wait: boolean;
  readonly logPace: Pace;
  /** Takes the virtual technician's key presses. */
  readonly act: (act: Act) => void;
  /** Told of a reading log that cannot be read. */
  readonly badLog: (says: string) => void;
}

export interface OpenFeed {
  readonly feed: Feed;
  readonly simulated: boolean;
  /** A recording or typed values begin with the first pin: there is no ground check. */
  readonly groundCheck: boolean;
  /** Who must hear the walk. */
  readonly hears: Follower | null;
  /** Reply pads that lie ready beside the board. */
  readonly pads?: readonly Pad[];
}

export type LinkKind = ReturnType<typeof parseLinkName>['kind'];

/** @throws UserError with one line when the name asks for no kind of link. */
export const linkKind = (link: string): LinkKind => orUsage(() => parseLinkName(link)).kind;

/** @throws UserError when the parts do not go together. */
export const openFeed = (wish: FeedWish): OpenFeed => {
  const name = orUsage(() => parseLinkName(wish.link));
  const { clock, measure } = wish;
  switch (name.kind) {
    case 'log': {
      const { logPace: pace, badLog: refused } = wish;
      const feed = createLogFeed({ file: name.file, pace, clock, refused });
      return { feed, simulated: false, groundCheck: false, hears: null };
    }
    case 'stdin': {
      const link = createStdinLink(clock);
      const feed = createTypedFeed({ link, measure });
      return { feed, simulated: false, groundCheck: false, hears: null };
    }
    case 'virtual': {
      const driver = neededDriver(wish);
      const bench = orUsage(() => parseBenchName(name.name));
      return openBench(wish, driver, bench);
    }
    case 'serial':
    case 'tcp': {
      const driver = neededDriver(wish);
      const patience = wish.wait ? 'forever' : 'once';
      const link = openLink(name, driver, { clock, patience });
      const feed = orUsage(() => createMeterFeed({ link, driver, wanted: wanted(wish), clock }));
      return { feed, simulated: false, groundCheck: true, hears: null };
    }
  }
};

const openBench = (wish: FeedWish, driver: Driver, bench: BenchName): OpenFeed => {
  const { clock, measure, profile, pins, donor, act } = wish;
  const setup = orUsage(() =>
    benchSetup({
      bench: { ...bench, donor: bench.donor || donor !== undefined },
      driver,
      profile,
      pins,
      measure,
      hears: true,
      act,
    }),
  );
  const link = createVirtualLink(`virtual bench, ${bench.scenario}`, setup, clock);
  const feed = orUsage(() => createMeterFeed({ link, driver, wanted: wanted(wish), clock }));
  const pads = setup.pads.length === 0 ? {} : { pads: learnedFrom(setup.pads, setup) };
  return { feed, simulated: true, groundCheck: true, hears: link.hear, ...pads };
};

const wanted = ({ measure }: FeedWish): { function: typeof measure.function; range?: number } => ({
  function: measure.function,
  ...(measure.range === undefined ? {} : { range: measure.range }),
});

const neededDriver = ({ driver, link }: FeedWish): Driver => {
  if (driver !== null) return driver;
  throw new UserError(english.refusals.needsDriver(link), exitCodes.usage);
};

/** Everything wrong with what the user asked for is a usage error with its own one line. */
const orUsage = <T>(make: () => T): T => {
  try {
    return make();
  } catch (error) {
    if (
      error instanceof LinkNameError ||
      error instanceof BenchNameError ||
      error instanceof RangeError ||
      (error instanceof Error && error.name === 'DialogueError')
    ) {
      throw new UserError(error.message, exitCodes.usage);
    }
    throw error;
  }
};

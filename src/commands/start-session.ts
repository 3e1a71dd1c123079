// How a walk begins: anew from what the options say, or where a saved session stopped.
import { randomInt } from 'node:crypto';
import type { EventOf, Numbered, WalkEvent } from '../core/events.js';
import { emptyJob, foldJob, type Job } from '../core/job/job.js';
import type { Driver } from '../core/meter/driver-format.js';
import { pinsOfGroups } from '../core/profile/pins-of-groups.js';
import { planWalk } from '../core/profile/plan.js';
import type { Profile } from '../core/profile/profile-format.js';
import type { RecheckHeader } from '../core/recheck/recheck-header.js';
import type { AccuracyStatement } from '../core/session-events.js';
import { programVersion } from '../core/version.js';
import { beginWalk } from '../core/walk/decide.js';
import { evolve } from '../core/walk/evolve.js';
import { foldStored, openStored } from '../core/walk/fold-stored.js';
import { openSession } from '../core/walk/open-session.js';
import { openWalk } from '../core/walk/open-walk.js';
import type { WalkState } from '../core/walk/state.js';
import { english } from '../core/words/english.js';
import type { Journal } from '../session/ports.js';
import { sessionTimeAt } from '../session/session-time.js';
import { createJournal } from '../store/journal-writer.js';
import {
  type Definition,
  loadDriver,
  loadDriverById,
  loadProfile,
} from '../store/load-definitions.js';
import { resumeJournal } from '../store/resume-journal.js';
import { newSessionPath } from '../store/session-paths.js';
import { type AccuracyOptions, askedAccuracy } from './accuracy-option.js';
import { choosePads } from './choose-pads.js';
import { goodBoardProfile } from './good-board.js';
import { linkKind, type OpenFeed } from './open-feed.js';
import { askedReady, type ReferenceAsked } from './ready-option.js';
import { exitCodes, UserError } from './user-error.js';
import { wallClock } from './wall-clock.js';

export interface StartOptions extends AccuracyOptions {
  readonly link?: string;
  readonly profile?: string;
  /** The session of a good board to compare with. */
  readonly compare?: string;
  /** Groups to walk, with commas between. */
  readonly groups?: string;
  readonly driver?: string;
  readonly session?: string;
  readonly resume?: string;
  readonly function?: Profile['measure']['function'];
  readonly polarity?: Profile['measure']['polarity'];
  readonly range?: number;
  readonly groundCheck: boolean;
  readonly leadZero?: boolean;
  readonly reference?: ReferenceAsked;
  readonly press?: 'asked' | 'each';
  /** A file of reply pads; false for none. */
  readonly pads?: string | false;
}

/** All that must be known before a link is opened or a file is made. */
export interface Preparation {
  readonly link: string;
  readonly profile: Profile;
  /** The only pins walked; absent: all. */
  readonly pins?: readonly string[] | undefined;
  readonly measure: Profile['measure'];
  readonly driver: Driver | null;
  /** Makes or reopens the session file. Called once the feed is known to fit. */
  readonly begin: (feed: OpenFeed, intake: (t: number) => readonly WalkEvent[]) => Beginning;
  /** What a resumed session knows of the job; empty in a new one. */
  readonly job: Job;
  /** A board that was just brought in, not one that is taken up again. */
  readonly isNewJob: boolean;
}

export interface Beginning {
  readonly path: string;
  readonly journal: Journal;
  readonly state: WalkState;
  /** What the file says about its beginning, for whoever follows. */
  readonly events: readonly Numbered[];
  /** In words, for the technician. */
  readonly notices: readonly string[];
}

/** What a press test alone is made on, or undefined for a walk. */
export type Alone = EventOf<'session-opened'>['pressAlone'];

export const prepareSession = (
  options: StartOptions,
  alone: (profile: Profile) => Alone = () => undefined,
): Preparation =>
  options.resume === undefined
    ? prepareNew(options, alone)
    : prepareResumed(options, options.resume);

const prepareNew = (options: StartOptions, alone: (profile: Profile) => Alone): Preparation => {
  const { link } = options;
  if (link === undefined) {
    throw new UserError(
      'which meter? give --link; --link virtual:demo needs none, `pinwalk ports` lists what is there',
      exitCodes.usage,
    );
  }
  const kind = linkKind(link);
  const { compare } = options;
  const profile =
    compare === undefined
      ? loadProfile(options.profile ?? usualProfile(kind))
      : goodBoardProfile({
          session: compare,
          ...(options.profile === undefined ? {} : { profile: options.profile }),
        });
  const pressAlone = alone(profile.content);
  const driver = driverFor(kind, options.driver);
  const measure = {
    ...profile.content.measure,
    ...(options.function === undefined ? {} : { function: options.function }),
    ...(options.polarity === undefined ? {} : { polarity: options.polarity }),
    ...(options.range === undefined ? {} : { range: options.range }),
  };
  const pins = options.groups === undefined ? undefined : pinsOf(options.groups, profile.content);
  return prepare(options, { link, profile, pins, measure, driver, pressAlone });
};

/** A walk of what an earlier session put in question: its profile and what it measured, whatever has moved on. */
export const prepareRecheck = (
  options: StartOptions,
  earlier: EventOf<'session-opened'>,
  recheck: RecheckHeader,
): Preparation => {
  const link = options.link ?? earlier.link;
  const { content, sha256 } = earlier.profile;
  const driver =
    options.driver === undefined && options.link === undefined && earlier.driver !== null
      ? loadDriverById(earlier.driver.id)
      : driverFor(linkKind(link), options.driver ?? earlier.driver?.id);
  const measure = { ...content.measure, ...earlier.measure };
  const pins = recheck.pins.map(({ pin }) => pin);
  const wanted = { link, profile: { content, sha256 }, pins, measure, driver, recheck };
  // What was said of the meter still holds, as long as nothing else is said of it.
  const isSaid = options.accuracy ?? options.counts ?? options.driver;
  return isSaid === undefined && earlier.accuracy.from === 'option'
    ? prepare(options, { ...wanted, accuracy: earlier.accuracy })
    : prepare(options, wanted);
};

interface Wanted {
  readonly link: string;
  readonly profile: { readonly content: Profile; readonly sha256: string };
  /** The only pins walked; undefined: all. */
  readonly pins: readonly string[] | undefined;
  readonly measure: Profile['measure'];
  readonly driver: Definition<Driver> | null;
  readonly accuracy?: AccuracyStatement;
  readonly recheck?: RecheckHeader;
  readonly pressAlone?: Alone;
}

const prepare = (
  options: StartOptions,
  { link, profile, pins, measure, driver, accuracy, recheck, pressAlone }: Wanted,
): Preparation => {
  const begin: Preparation['begin'] = ({ simulated, groundCheck, pads: ready }, intake) => {
    const kind = linkKind(link);
    const isMeter = kind === 'serial' || kind === 'tcp';
    const { pads, notices } = choosePads(options.pads, {
      ready: ready ?? null,
      isMeter,
      plan: planWalk(profile.content, measure, pins),
    });
    const opened = openSession({
      profile,
      driver: driver === null ? null : { id: driver.content.id, sha256: driver.sha256 },
      accuracy: accuracy ?? askedAccuracy(options, driver?.content ?? null, measure.function),
      measure,
      link,
      simulated,
      groundCheck: groundCheck && options.groundCheck,
      ...askedReady(options, measure.function),
      seed: randomInt(2 ** 31),
      pressTests: options.press ?? 'asked',
      ...(pads.length === 0 ? {} : { pads }),
      ...(pins === undefined ? {} : { pins }),
      ...(recheck === undefined ? {} : { recheck }),
      ...(pressAlone === undefined ? {} : { pressAlone }),
      ...wallClock(),
    });
    const given = intake(opened.t);
    const { state, events } = beginWalk(given.reduce(evolve, openWalk(opened)));
    const path = options.session ?? newSessionPath(profile.content.id, new Date());
    const journal = createJournal(path);
    const written = journal.append([opened, ...given, ...events]);
    journal.sync();
    const said = isMeter ? [english.context.groundedLead, ...notices] : notices;
    return { path, journal, state, events: written, notices: said };
  };
  return {
    link,
    profile: profile.content,
    pins,
    measure,
    driver: driver?.content ?? null,
    begin,
    job: emptyJob,
    isNewJob: recheck === undefined,
  };
};

const prepareResumed = (options: StartOptions, path: string): Preparation => {
  const { events, journal, tornBytes, notices } = resumeJournal(path);
  const [opened, ...rest] = events;
  if (opened?.type !== 'session-opened') {
    throw new UserError(`${path}: no session begins here; start a new one`, exitCodes.badFile);
  }
  const state = rest.reduce<WalkState>(foldStored, openStored(opened));
  const link = options.link ?? opened.link;
  const driver =
    options.driver === undefined && opened.driver !== null
      ? loadDriverById(opened.driver.id)
      : driverFor(linkKind(link), options.driver);
  const begin: Preparation['begin'] = (_feed, intake) => {
    const resumed: EventOf<'session-resumed'> = {
      type: 'session-resumed',
      t: sessionTimeAt(events, Date.now()),
      program: programVersion,
      tornBytes,
      ...wallClock(),
    };
    // Says once more which pin is waited for: nobody may have heard it.
    const given = intake(resumed.t);
    const again = beginWalk(given.reduce(evolve, evolve(state, resumed)));
    const written = journal.append([resumed, ...given, ...again.events]);
    journal.sync();
    return { path, journal, state: again.state, events: written, notices };
  };
  const { content: profile } = opened.profile;
  const measure = { ...profile.measure, ...opened.measure };
  return {
    link,
    profile,
    pins: opened.pins,
    measure,
    driver: driver?.content ?? null,
    begin,
    job: events.reduce(foldJob, emptyJob),
    isNewJob: false,
  };
};

/** @throws UserError for a group no line belongs to. */
const pinsOf = (groups: string, profile: Profile): readonly string[] => {
  try {
    return pinsOfGroups(
      profile,
      groups.split(',').map((group) => group.trim()),
    );
  } catch (error) {
    if (error instanceof RangeError) throw new UserError(error.message, exitCodes.usage);
    throw error;
  }
};

const usualProfile = (kind: ReturnType<typeof linkKind>): string => {
  if (kind === 'virtual') return 'demo';
  throw new UserError(
    'which connector? give --profile ID or FILE; `pinwalk check --list` shows the shipped ones',
    exitCodes.usage,
  );
};

/** The bench imitates any driver; typed values and logs need none. */
const driverFor = (
  kind: ReturnType<typeof linkKind>,
  asked: string | undefined,
): Definition<Driver> | null => {
  const id = asked ?? (kind === 'virtual' ? 'stream-fields-flags' : undefined);
  return id === undefined ? null : loadDriver(id);
};

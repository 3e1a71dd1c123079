// A session that begins anew, from what the options say: a walk, a press test alone, or the recheck of an earlier walk.
import { randomInt } from 'node:crypto';
import type { EventOf } from '../core/events.js';
import { emptyJob } from '../core/job/job.js';
import type { Driver } from '../core/meter/driver-format.js';
import { quoted } from '../core/problems.js';
import { type DonorWay, offBoard } from '../core/profile/donor.js';
import { pinsOfGroups } from '../core/profile/pins-of-groups.js';
import { expectsLittle, planWalk } from '../core/profile/plan.js';
import type { Profile } from '../core/profile/profile-format.js';
import type { RecheckHeader } from '../core/recheck/recheck-header.js';
import type { AccuracyStatement } from '../core/session-events.js';
import { beginWalk } from '../core/walk/decide.js';
import { evolve } from '../core/walk/evolve.js';
import { openSession } from '../core/walk/open-session.js';
import { openWalk } from '../core/walk/open-walk.js';
import { english } from '../core/words/english.js';
import { createJournal } from '../store/journal-writer.js';
import { type Definition, loadDriverById, loadProfile } from '../store/load-definitions.js';
import { newSessionPath } from '../store/session-paths.js';
import { askedAccuracy } from './accuracy-option.js';
import { askedLink, askedMeasure, driverFor } from './asked-meter.js';
import { choosePads } from './choose-pads.js';
import { goodBoardProfile } from './good-board.js';
import { type LinkKind, linkKind } from './open-feed.js';
import type { Alone, Preparation, StartOptions } from './preparation.js';
import { askedReady } from './ready-option.js';
import { exitCodes, UserError } from './user-error.js';
import { wallClock } from './wall-clock.js';

/** @param alone the press test that the session is, on the profile that was chosen; none for a walk. */
export const prepareNew = (
  options: StartOptions,
  alone: (profile: Profile) => Alone = () => undefined,
): Preparation => {
  const link = askedLink(options.link);
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
  const measure = askedMeasure(options, profile.content.measure);
  const pins = options.groups === undefined ? undefined : pinsOf(options.groups, profile.content);
  const donor = options.donorBeside ? askedDonor(profile.content, compare) : undefined;
  return prepare(options, { link, profile, pins, measure, driver, pressAlone, donor });
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
  readonly donor?: DonorWay | undefined;
}

const prepare = (
  options: StartOptions,
  { link, profile, pins, measure, driver, accuracy, recheck, pressAlone, donor }: Wanted,
): Preparation => {
  const begin: Preparation['begin'] = ({ simulated, groundCheck, pads: ready }, intake) => {
    const kind = linkKind(link);
    const isMeter = kind === 'serial' || kind === 'tcp';
    const plan = planWalk(profile.content, measure, pins);
    const { pads, notices } = choosePads(options.pads, { ready: ready ?? null, isMeter, plan });
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
      ...(donor === undefined ? {} : { donor }),
      ...wallClock(),
    });
    const given = intake(opened.t);
    const { state, events } = beginWalk(given.reduce(evolve, openWalk(opened)));
    const path = options.session ?? newSessionPath(profile.content.id, new Date());
    const journal = createJournal(path);
    const written = journal.append([opened, ...given, ...events]);
    journal.sync();
    const said = [
      ...(isMeter ? [english.context.groundedLead] : []),
      ...(pressAlone === undefined && expectsLittle(plan)
        ? [donor === undefined ? english.context.orderAlone : english.context.donorUnknown]
        : []),
      ...notices,
    ];
    return { path, journal, state, events: written, notices: said };
  };
  return {
    link,
    profile: profile.content,
    pins,
    donor,
    measure,
    driver: driver?.content ?? null,
    begin,
    job: emptyJob,
    isNewJob: recheck === undefined,
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

/** @throws UserError where a donor was walked before, or a name of the profile is one that the donor's pins bear. */
const askedDonor = (profile: Profile, compare: string | undefined): DonorWay => {
  if (compare !== undefined) {
    throw new UserError(english.refusals.compareOrBeside, exitCodes.usage);
  }
  const names = [
    ...profile.connector.pins.flatMap(({ pin, line }) => [pin, line]),
    ...Object.values(profile.lines).flatMap(({ group }) => group ?? []),
  ];
  const taken = names.find((name) => offBoard(name).board === 'donor');
  if (taken === undefined) return 'beside';
  throw new UserError(english.refusals.donorNamed(quoted(taken)), exitCodes.usage);
};

const usualProfile = (kind: LinkKind): string => {
  if (kind === 'virtual') return 'demo';
  throw new UserError(english.refusals.whichConnector, exitCodes.usage);
};

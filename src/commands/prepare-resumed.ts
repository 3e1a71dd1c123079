// A session that is taken up again where its file stopped.
import type { EventOf } from '../core/events.js';
import { emptyJob, foldJob } from '../core/job/job.js';
import { programVersion } from '../core/version.js';
import { beginWalk } from '../core/walk/decide.js';
import { evolve } from '../core/walk/evolve.js';
import { foldStored, openStored } from '../core/walk/fold-stored.js';
import type { WalkState } from '../core/walk/state.js';
import { english } from '../core/words/english.js';
import { sessionTimeAt } from '../session/session-time.js';
import { loadDriverById } from '../store/load-definitions.js';
import { resumeJournal } from '../store/resume-journal.js';
import { driverFor } from './asked-meter.js';
import { linkKind } from './open-feed.js';
import type { Preparation, StartOptions } from './preparation.js';
import { exitCodes, UserError } from './user-error.js';
import { wallClock } from './wall-clock.js';

export const prepareResumed = (options: StartOptions, path: string): Preparation => {
  const { events, journal, tornBytes, notices } = resumeJournal(path);
  const [opened, ...rest] = events;
  if (opened?.type !== 'session-opened') {
    throw new UserError(english.refusals.nothingToResume(path), exitCodes.badFile);
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
    donor: opened.donor,
    measure,
    driver: driver?.content ?? null,
    begin,
    job: events.reduce(foldJob, emptyJob),
    isNewJob: false,
  };
};

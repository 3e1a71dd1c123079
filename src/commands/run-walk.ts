// Runs a walk that has been prepared: source of readings, session file, screen and cues, to its end.
import type { CueMode } from '../core/cue-mode.js';
import type { Act } from '../core/inputs.js';
import { evolve } from '../core/walk/evolve.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { type RunningSession, runSession } from '../session/run-session.js';
import { readKeys } from '../store/key-file.js';
import { type BeforeOptions, intakeBefore, residualBefore } from './before-walk.js';
import { configuration } from './configuration.js';
import { canAsk, chooseFace, type FaceOptions, terminalHere } from './face.js';
import { linkKind, openFeed } from './open-feed.js';
import type { Preparation } from './preparation.js';
import { reportEnd } from './report-end.js';
import { complain } from './say.js';
import { showSession } from './show-session.js';

export interface RunOptions extends FaceOptions, BeforeOptions {
  readonly wait?: boolean;
  readonly logPace: 'real-time' | 'fast';
  readonly readings?: boolean;
  readonly stay?: boolean;
  readonly cues?: CueMode;
}

/** Seconds to keep trying a session file that cannot be written, where nobody sits at a keyboard. */
const unattendedPatienceS = 15;

export const runWalk = async (preparation: Preparation, options: RunOptions): Promise<void> => {
  const clock = createMonotonicClock();
  const terminal = terminalHere();
  const keys = readKeys(configuration().keysFile);
  const { link, profile, pins, measure, driver } = preparation;
  const kind = linkKind(link);
  const face = chooseFace(options, { ...terminal, input: terminal.input && kind !== 'stdin' });
  let session: RunningSession | null = null;
  let badLog: string | null = null;
  const wish = {
    link,
    profile,
    pins,
    driver,
    clock,
    wait: options.wait ?? false,
    logPace: options.logPace,
    act: (act: Act) => session?.act(act),
    badLog: (says: string) => {
      badLog = says;
    },
  };
  const source = openFeed({ ...wish, measure });
  const before = {
    options,
    profile,
    job: preparation.job,
    isNewJob: preparation.isNewJob,
    realMeter: kind === 'serial' || kind === 'tcp',
    canAsk: canAsk(options, terminal),
  };
  const intake = await intakeBefore(before);
  const { journal, path, notices, ...begun } = preparation.begin(source, intake);
  for (const notice of notices) complain(notice);
  const startT = begun.state.t;
  const clockStart = clock.now();
  const sessionTime = (t: number): number => startT + t - clockStart;
  let { state, events } = begun;
  await residualBefore({
    before,
    driver,
    openVolts: () =>
      openFeed({ ...wish, measure: { function: 'dc-volts', polarity: measure.polarity } }).feed,
    keep: (event) => {
      events = [...events, ...journal.append([event])];
      journal.sync();
      state = evolve(state, event);
    },
    now: () => sessionTime(clock.now()),
  });
  session = runSession({
    state,
    journal,
    feed: source.feed,
    clock,
    sessionTime,
    closeWhenFinished: face !== 'screen' && !options.stay,
    writePatienceS: face === 'screen' ? Number.POSITIVE_INFINITY : unattendedPatienceS,
  });
  const { hears } = source;
  if (hears !== null) {
    for (const event of events) hears(event);
    session.follow(hears);
  }
  const { simulated } = source;
  const readings = options.readings ?? false;
  const cues = options.cues ?? (face === 'screen' ? 'tones' : 'off');
  await showSession({ session, face, events, readings, profile, simulated, cues, clock, keys });
  reportEnd(await session.ended, { session, journal, path, badLog });
};

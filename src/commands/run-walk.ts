// Runs a walk that has been prepared: source of readings, session file, screen and cues, to its end.
import type { CueMode } from '../core/cue-mode.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { type RunningSession, runSession } from '../session/run-session.js';
import { readKeys } from '../store/key-file.js';
import { configuration } from './configuration.js';
import { chooseFace, type FaceOptions } from './face.js';
import { linkKind, openFeed } from './open-feed.js';
import { reportEnd } from './report-end.js';
import { showSession } from './show-session.js';
import type { Preparation } from './start-session.js';

export interface RunOptions extends FaceOptions {
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
  const terminal = {
    output: process.stdout.isTTY === true,
    input: process.stdin.isTTY === true,
  };
  const keys = readKeys(configuration().keysFile);
  const { link, profile, pins, measure, driver } = preparation;
  const face = chooseFace(options, {
    output: terminal.output,
    input: terminal.input && linkKind(link) !== 'stdin',
  });
  let session: RunningSession | null = null;
  let badLog: string | null = null;
  const source = openFeed({
    link,
    profile,
    pins,
    measure,
    driver,
    clock,
    wait: options.wait ?? false,
    logPace: options.logPace,
    act: (act) => session?.act(act),
    badLog: (says) => {
      badLog = says;
    },
  });
  const { journal, state, events, path, notices } = preparation.begin(source);
  for (const notice of notices) process.stderr.write(`${notice}\n`);
  const startT = state.t;
  const clockStart = clock.now();
  session = runSession({
    state,
    journal,
    feed: source.feed,
    clock,
    sessionTime: (t) => startT + t - clockStart,
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

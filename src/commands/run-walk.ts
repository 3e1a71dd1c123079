// Runs a walk that has been prepared: source of readings, session file, screen and cues, to its end.
import type { CueMode } from '../core/cue-mode.js';
import type { Act } from '../core/inputs.js';
import { evolve } from '../core/walk/evolve.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { exitCodeOfSignal, onEndSignals } from '../session/end-signals.js';
import { type RunningSession, runSession } from '../session/run-session.js';
import { readKeys } from '../store/key-file.js';
import { type BeforeOptions, intakeBefore, residualBefore } from './before-walk.js';
import { configuration } from './configuration.js';
import { canAsk, chooseFace, type Face, type FaceOptions, terminalHere } from './face.js';
import { linkKind, openFeed } from './open-feed.js';
import type { Preparation } from './preparation.js';
import { reportEnd } from './report-end.js';
import { complain } from './say.js';
import { showSession } from './show-session.js';
import { UserError } from './user-error.js';

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
  const { link, profile, pins, donor, measure, driver } = preparation;
  const kind = linkKind(link);
  const face = chooseFace(options, { ...terminal, input: terminal.input && kind !== 'stdin' });
  let session: RunningSession | null = null;
  let badLog: string | null = null;
  const wish = {
    link,
    profile,
    pins,
    donor,
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
  const early = hearEndEarly(face);
  const { journal, path, notices, ...begun } = preparation.begin(source, intake);
  for (const notice of notices) complain(notice);
  const startT = begun.state.t;
  const clockStart = clock.now();
  const sessionTime = (t: number): number => startT + t - clockStart;
  let { state, events } = begun;
  const left = await leaving(() =>
    residualBefore({
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
    }),
  );
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
  const quit = (): void => session?.act({ act: 'quit' });
  if (left === null) {
    const shown = { session, face, events, readings, profile, simulated, cues, clock, keys };
    const ended = showSession(shown);
    early.pass(quit);
    await ended;
  } else {
    quit();
  }
  early.stop();
  reportEnd(await session.ended, { session, journal, path, badLog });
  if (left !== null) throw left;
};

/** Why what comes before the walk was left, or null where it was not. */
const leaving = async (before: () => Promise<void>): Promise<UserError | null> => {
  try {
    await before();
    return null;
  } catch (error) {
    if (error instanceof UserError) return error;
    throw error;
  }
};

interface EarlyEnd {
  /** What a signal does from now on, also one that has come already. */
  readonly pass: (quit: () => void) => void;
  readonly stop: () => void;
}

/** The session file is there, and nobody yet who would close it. */
const hearEndEarly = (face: Face): EarlyEnd => {
  let came = false;
  let end: (() => void) | null = null;
  const stop = onEndSignals((number) => {
    // Lines that are being printed end well, as by "q".
    if (end === null || face === 'screen') process.exitCode = exitCodeOfSignal(number);
    came = true;
    end?.();
  });
  return {
    stop,
    pass: (quit) => {
      end = quit;
      if (came) quit();
    },
  };
};

// Records a lesson through the program itself: the same session loop, meter dialogue and session file as a live
// walk, on a clock that is stepped instead of waited for, so that the same program gives the same file.
import { parseBenchName } from '../../../src/bench/bench-name.js';
import { benchSetup } from '../../../src/bench/bench-setup.js';
import { createVirtualLink } from '../../../src/bench/virtual-link.js';
import type { Numbered } from '../../../src/core/events.js';
import { beginWalk } from '../../../src/core/walk/decide.js';
import { driverAccuracy, openSession } from '../../../src/core/walk/open-session.js';
import { openWalk } from '../../../src/core/walk/open-walk.js';
import { createMeterFeed } from '../../../src/session/meter-feed.js';
import { type RunningSession, runSession } from '../../../src/session/run-session.js';
import { createJournal } from '../../../src/store/journal-writer.js';
import { loadDriver, loadProfile } from '../../../src/store/load-definitions.js';
import { createSteppedClock } from '../../bench/support/stepped-clock.js';
import type { Lesson } from './lesson.js';

export const recordedWallTime = '2026-01-31T10:00:00.000Z';
const recordedSeed = 20_260_131;
/** Simulated seconds after which a walk that does not finish is given up. */
const patienceS = 900;
/** Time to read the last note before the session is closed. */
const lingerS = 6;

/** @throws Error when the walk does not finish, or the moment of a note never comes. */
export const recordLesson = async (lesson: Lesson, path: string): Promise<void> => {
  const clock = createSteppedClock();
  const profile = loadProfile('demo');
  const driver = loadDriver('stream-fields-flags');
  const measure = profile.content.measure;
  const link = `virtual:${lesson.bench}`;
  let session: RunningSession | null = null;
  const setup = benchSetup({
    bench: parseBenchName(lesson.bench),
    driver: driver.content,
    profile: profile.content,
    hears: true,
    act: (act) => session?.act(act),
  });
  const bench = createVirtualLink(`virtual bench, ${lesson.name}`, setup, clock);
  const opened = openSession({
    profile,
    driver: { id: driver.content.id, sha256: driver.sha256 },
    accuracy: driverAccuracy(driver.content, measure.function),
    measure,
    link,
    simulated: true,
    groundCheck: true,
    wallTime: recordedWallTime,
    zone: 'UTC',
    seed: recordedSeed,
    pressTests: lesson.pressTests,
  });
  const { state, events } = beginWalk(openWalk(opened));
  const journal = createJournal(path);
  const written = journal.append([opened, ...events]);
  const running = runSession({
    state,
    journal,
    feed: createMeterFeed({
      link: bench,
      driver: setup.driver,
      wanted: { function: measure.function },
      clock,
    }),
    clock,
    sessionTime: (t) => t,
    closeWhenFinished: false,
    writePatienceS: 1,
  });
  session = running;
  for (const event of written) bench.hear(event);
  running.follow(bench.hear);
  const left = [...lesson.notes];
  const takeNotes = (event: Numbered): void => {
    const note = left[0];
    if (note === undefined || !note.when(event)) return;
    left.shift();
    const { text, pin } = note;
    clock.after(note.afterS, () =>
      running.act({ act: 'note', text, ...(pin === undefined ? {} : { pin }) }),
    );
  };
  running.follow(takeNotes);
  running.start();
  clock.run(patienceS, () => running.state.stage === 'finished');
  const finished = running.state.stage === 'finished';
  clock.run(clock.now() + lingerS);
  running.act({ act: 'quit' });
  await running.ended;
  if (!finished) throw new Error(`${lesson.name}: the walk did not finish`);
  if (left[0] !== undefined) throw new Error(`${lesson.name}: never came to "${left[0].text}"`);
};

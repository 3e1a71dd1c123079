// `replay`: a saved session once more, in the same screens and cues, or as lines.
import { Command, InvalidArgumentError } from 'commander';
import type { CueMode } from '../core/cue-mode.js';
import type { Control } from '../core/replay/control.js';
import { fastest, slowest } from '../core/replay/playback.js';
import { readGoal } from '../core/replay/read-goal.js';
import type { Recording } from '../core/replay/recording.js';
import { english } from '../core/words/english.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { replaySession } from '../session/replay-session.js';
import { readKeys } from '../store/key-file.js';
import { openRecording } from '../store/open-recording.js';
import { configuration } from './configuration.js';
import { chooseFace, type Face, type FaceOptions } from './face.js';
import { complain } from './say.js';
import { showSession } from './show-session.js';
import { exitCodes, UserError } from './user-error.js';
import { cuesOption } from './usual-options.js';
import { writeReadingLog } from './write-reading-log.js';

interface ReplayOptions extends FaceOptions {
  readonly speed: number | 'max';
  readonly from?: string;
  readonly readings?: boolean;
  readonly press?: string;
  readonly part?: string;
  readonly cues?: CueMode;
}

const examples = `
Examples:
  pinwalk replay recordings/sessions/loose-filter.jsonl
      plays a recorded session on the screen; ? lists the keys
  pinwalk replay session.jsonl --from pin:8 --speed 5
  pinwalk replay session.jsonl --from 1:35
  pinwalk replay session.jsonl --plain --speed max
      everything that was said, at once
  pinwalk replay session.jsonl --readings > readings.jsonl
      the readings and marks as a reading log, for rerun`;

export const replayCommand = (): Command =>
  new Command('replay')
    .description('play a saved session in the same screens and cues: speed, pause, seek')
    .argument('<file>', 'a session file')
    .option(
      '--speed <factor>',
      `${slowest} to ${fastest}; max for all at once as lines`,
      readSpeed,
      1,
    )
    .option('--from <place>', 'where to begin: seconds, 1:35, pin:8 or event:200')
    .addOption(cuesOption())
    .option('--readings', 'write the readings and marks as a reading log, and play nothing')
    .option('--press <line>', 'with --readings: only the press tests of this line')
    .option('--part <name>', 'with --press: at this part (default: the first one pressed)')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text, without cursor control')
    .addHelpText('after', examples)
    .action(replay);

const replay = async (file: string, options: ReplayOptions): Promise<void> => {
  const { readings, press, part } = options;
  if ((press !== undefined && !readings) || (part !== undefined && press === undefined)) {
    throw new UserError(english.refusals.pressWithoutReadings, exitCodes.usage);
  }
  if (readings) {
    if (options.plain || options.from !== undefined) {
      throw new UserError(english.refusals.logHasOneForm, exitCodes.usage);
    }
    writeReadingLog(file, press === undefined ? null : { line: press, part: part ?? null });
    return;
  }
  const face = chooseFace(options);
  if (face === 'screen' && options.speed === 'max') {
    throw new UserError(english.refusals.tooFastForScreen(fastest), exitCodes.usage);
  }
  const { recording, end, close } = openRecording(file);
  try {
    if (end.tornBytes > 0) complain(english.replay.torn(end.tornBytes));
    await play(recording, face, options);
  } finally {
    close();
  }
};

const play = async (recording: Recording, face: Face, options: ReplayOptions): Promise<void> => {
  const { speed } = options;
  const { opened } = recording;
  const clock = createMonotonicClock();
  const session = replaySession({
    recording,
    clock,
    speed,
    ...(options.from === undefined ? {} : { from: goalIn(recording, options.from) }),
    closeAtEnd: face !== 'screen',
  });
  await showSession({
    session,
    face,
    events: [],
    readings: false,
    keys: readKeys(configuration().keysFile),
    profile: opened.profile.content,
    simulated: opened.simulated,
    cues: options.cues ?? configuration().cues ?? (face === 'screen' ? 'tones' : 'off'),
    clock,
  });
};

/** @throws UserError for what is no place in this session. */
const goalIn = (recording: Recording, written: string): Control => {
  const pins = recording.endState.plan.pins.map(({ pin }) => pin);
  let goal: Control;
  try {
    goal = readGoal(written, pins);
  } catch (error) {
    if (error instanceof RangeError)
      throw new UserError(english.refusals.behind('--from', error.message), exitCodes.usage);
    throw error;
  }
  if (goal.control === 'to-pin' && !recording.reached.has(goal.pin)) {
    const why = english.replay.neverReached(goal.pin);
    throw new UserError(english.refusals.behind('--from', why), exitCodes.usage);
  }
  return goal;
};

const readSpeed = (text: string): number | 'max' => {
  if (text === 'max') return 'max';
  const speed = /^\d{1,2}(\.\d{1,3})?$/u.test(text) ? Number(text) : Number.NaN;
  if (speed >= slowest && speed <= fastest) return speed;
  throw new InvalidArgumentError(`write a number from ${slowest} to ${fastest}, or max`);
};

// `rework`: what was done to the board after the walk, with how much heat; added to the walk's own session.
import { Command, Option } from 'commander';
import { cleanText } from '../core/clean-text.js';
import type { CueMode } from '../core/cue-mode.js';
import type { Place } from '../core/rework/heat-limits.js';
import { longestNote, placeNamed } from '../core/rework/parse-desk-line.js';
import {
  type ReworkAction,
  type ReworkTool,
  reworkActions,
  reworkTools,
} from '../core/rework/rework-events.js';
import { openStored } from '../core/walk/fold-stored.js';
import { english } from '../core/words/english.js';
import { createCuePlayer } from '../cues/cue-player.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { createNotices } from '../session/notices.js';
import { openReworkDesk, type ReworkDesk } from '../session/rework-desk.js';
import { readKeys } from '../store/key-file.js';
import { openLaterWork } from '../store/later-work.js';
import { configuration } from './configuration.js';
import { chooseFace, type FaceOptions } from './face.js';
import { printer } from './print-events.js';
import { reworkInLines, warnOfSetting } from './rework-in-lines.js';
import { complain, ringBell } from './say.js';
import { exitCodes, UserError } from './user-error.js';
import { cuesOption, readPositive } from './usual-options.js';
import { wallClock } from './wall-clock.js';

interface ReworkOptions extends FaceOptions {
  readonly action?: ReworkAction;
  readonly part?: string;
  readonly area?: string;
  readonly tool?: ReworkTool;
  readonly setPoint?: number;
  readonly airflow?: number;
  readonly seconds?: number;
  readonly note?: string;
  readonly cues?: CueMode;
}

const examples = `
Examples:
  pinwalk rework session.jsonl
      a timer to be started and stopped by key or pedal while heat is on
  pinwalk rework session.jsonl --action reflow --part FL2 --tool hot-air --set-point 330 --airflow 30 --seconds 22
      notes what was done, in one go
  pinwalk rework session.jsonl --action clean --area "beside the connector" --note "flux washed off"`;

const words = english;

export const reworkCommand = (): Command =>
  new Command('rework')
    .description('note rework on a walked board, with a timer and limits for heat')
    .argument('<session>', 'the saved session of the walk')
    .addOption(
      new Option('--action <name>', 'what was done; notes it and ends').choices(reworkActions),
    )
    .option('--part <name>', 'the part, as the profile names it')
    .option('--area <name>', 'an area of the profile, or any place')
    .addOption(new Option('--tool <name>', 'what heated').choices(reworkTools))
    .option('--set-point <celsius>', "the tool's set-point", readPositive())
    .option('--airflow <figure>', 'as the station shows it', readPositive())
    .option('--seconds <s>', 'time under heat', readPositive())
    .option('--note <text>', 'anything else')
    .addOption(cuesOption())
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text, without cursor control')
    .addHelpText('after', examples)
    .action(rework);

const rework = async (session: string, options: ReworkOptions): Promise<void> => {
  const face = chooseFace(options);
  const keys = readKeys(configuration().keysFile);
  const clock = createMonotonicClock();
  const record = openLaterWork(session, { now: clock.now, wall: wallClock() });
  for (const notice of record.notices) complain(notice);
  const desk = openReworkDesk(record, configuration().heatLimits ?? {}, clock);
  const state = openStored(record.opened);
  const once = options.action !== undefined;
  const onScreen = face === 'screen' && !once;
  if (!onScreen) desk.follow(printer(face, { readings: true, state: () => state }));
  const notices = createNotices();
  if (!onScreen) notices.follow(complain);
  const cues = createCuePlayer({
    mode: options.cues ?? configuration().cues ?? (onScreen ? 'tones' : 'off'),
    words,
    clock,
    bell: ringBell,
    says: notices.say,
  });
  desk.follow((event) => cues.follow(event, state));
  try {
    if (options.action !== undefined) logOnce(desk, options, options.action);
    else if (onScreen) {
      const { runDesk } = await import('../ui/rework/run-desk.js');
      await runDesk({ desk, before: record.before, words, keys });
    } else await reworkInLines(desk, record, face === 'plain');
  } finally {
    await cues.close();
    await desk.close();
  }
  // A line beside the screen would tear it: what could not be sounded is said once the screen is gone.
  if (onScreen) notices.said.forEach(complain);
  complain(words.savedIn(cleanText(session, 300)));
};

/** @throws UserError where the entry names no place it could belong to. */
const logOnce = (desk: ReworkDesk, options: ReworkOptions, action: ReworkAction): void => {
  const profile = desk.opened.profile.content;
  const place = placeGiven(options, profile);
  const { tool, setPoint, airflow, seconds } = options;
  const note = options.note === undefined ? undefined : cleanText(options.note, longestNote);
  const entry = { action, ...place, tool, setPoint, airflow, seconds, note };
  desk.act({ kind: 'log', entry });
  warnOfSetting(desk, place, { setPoint });
};

const placeGiven = (
  { part, area }: ReworkOptions,
  profile: Parameters<typeof placeNamed>[1],
): Place => {
  if (part === undefined) return area === undefined ? {} : { area: cleanText(area, 40) };
  const place = placeNamed(part, profile);
  if (place.part !== undefined)
    return { ...place, ...(area === undefined ? {} : { area: cleanText(area, 40) }) };
  const known = Object.keys(profile.parts ?? {}).slice(0, 8);
  throw new UserError(english.refusals.noPart(cleanText(part, 40), known), exitCodes.usage);
};

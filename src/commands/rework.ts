// `rework`: what was done to the board after the walk, with how much heat; added to the walk's own session.
import { createInterface } from 'node:readline';
import { Command, Option } from 'commander';
import { cleanText } from '../core/clean-text.js';
import type { CueMode } from '../core/cue-mode.js';
import { firstPlace, firstSetting } from '../core/rework/begin-desk.js';
import type { Setting } from '../core/rework/decide-rework.js';
import { heatedAreas, type Place } from '../core/rework/heat-limits.js';
import { longestNote, parseDeskLine, placeNamed } from '../core/rework/parse-desk-line.js';
import {
  heatCautions,
  type ReworkAction,
  type ReworkTool,
  reworkActions,
  reworkTools,
} from '../core/rework/rework-events.js';
import { openStored } from '../core/walk/fold-stored.js';
import { english } from '../core/words/english.js';
import { createCuePlayer } from '../cues/cue-player.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { onEndSignals } from '../session/end-signals.js';
import { createNotices } from '../session/notices.js';
import { openReworkDesk, type ReworkDesk } from '../session/rework-desk.js';
import { readKeys } from '../store/key-file.js';
import { type LaterWork, openLaterWork } from '../store/later-work.js';
import { configuration } from './configuration.js';
import { chooseFace, type FaceOptions } from './face.js';
import { printJson, printPlain } from './print-events.js';
import { complain, ringBell, sayLine } from './say.js';
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
  if (!onScreen) {
    desk.follow(face === 'json' ? printJson(true) : printPlain(words, () => state));
  }
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
    } else await readDeskLines(desk, record, face === 'plain');
  } finally {
    await cues.close();
    await desk.close();
  }
  // A line beside the screen would tear it: what could not be sounded is said once the screen is gone.
  if (onScreen) notices.said.forEach(complain);
  complain(`Saved in ${cleanText(session, 300)}`);
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
  const known = Object.keys(profile.parts ?? {})
    .slice(0, 8)
    .join(', ');
  throw new UserError(
    `the profile has no part ${cleanText(part, 40)}; it has ${known === '' ? 'none' : known}, or name any place with --area`,
    exitCodes.usage,
  );
};

const warnOfSetting = (desk: ReworkDesk, place: Place, { setPoint }: Setting): void => {
  if (setPoint === undefined) return;
  const allowed = heatedAreas(desk.opened.profile.content, desk.limits, place).flatMap(
    ({ limits }) => limits.setPoint ?? [],
  );
  const least = Math.min(...allowed);
  if (setPoint <= least) return;
  const { rework: says } = words;
  complain(says.setPointOver(says.setPoint(setPoint), says.setPoint(least)));
};

/** Lines typed or piped: the same acts as the keys of the screen. */
const readDeskLines = async (
  desk: ReworkDesk,
  record: LaterWork,
  tells: boolean,
): Promise<void> => {
  const profile = desk.opened.profile.content;
  let place = firstPlace(record.before, desk.state, profile);
  let setting = firstSetting(desk.state);
  const say = (text: string): void => {
    if (tells) sayLine(text);
  };
  for (const caution of [
    ...heatCautions.map((id) => words.rework.caution[id]),
    ...(profile.cautions ?? []),
  ]) {
    say(cleanText(caution, 300));
  }
  say(words.rework.lines.hint);
  const act = (asked: Parameters<ReworkDesk['act']>[0]): void => {
    const refused = desk.act(asked);
    if (refused !== null) complain(words.rework.refused[refused]);
  };
  const lines = createInterface({ input: process.stdin });
  const stop = (): void => lines.close();
  const stopListening = onEndSignals(stop);
  for await (const text of lines) {
    if (text.trim() === '') continue;
    const said = parseDeskLine(text, profile);
    if (said === null) {
      complain(words.rework.lines.unknown(cleanText(text, 80)));
      complain(words.rework.lines.hint);
      continue;
    }
    if (said.line === 'quit') break;
    switch (said.line) {
      case 'confirm':
        act({ kind: 'confirm' });
        break;
      case 'heat':
        place = said.place ?? place;
        warnOfSetting(desk, place, setting);
        act({ kind: 'heat-on', place, setting });
        break;
      case 'stop':
        act({ kind: 'heat-off', action: 'reflow' });
        break;
      case 'place':
        place = said.place;
        break;
      case 'tool':
        setting = { ...setting, tool: said.tool };
        break;
      case 'set-point':
        setting = { ...setting, setPoint: said.number };
        break;
      case 'airflow':
        setting = { ...setting, airflow: said.number };
        break;
      case 'done':
        act({ kind: 'log', entry: { action: said.action, ...(said.place ?? place) } });
        break;
      case 'note':
        act({ kind: 'log', entry: { action: 'inspect', ...place, note: said.text } });
        break;
    }
  }
  lines.close();
  stopListening();
  if (desk.state.heat !== null) act({ kind: 'heat-off', action: 'reflow' });
};

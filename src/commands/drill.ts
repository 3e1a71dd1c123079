// `drill`: a recorded session with its verdicts held back; the trainee calls them.
import { Command, Option } from 'commander';
import { cleanText } from '../core/clean-text.js';
import type { Drill } from '../core/drill/drill-format.js';
import { shownPoints } from '../core/drill/drill-lines.js';
import { type DrillResult, resultOf } from '../core/drill/drill-result.js';
import { planDrill } from '../core/drill/plan-drill.js';
import type { Numbered } from '../core/events.js';
import { fastest, slowest } from '../core/replay/playback.js';
import { eventAt, type Recording } from '../core/replay/recording.js';
import { english } from '../core/words/english.js';
import { createMonotonicClock } from '../link/monotonic-clock.js';
import { type DrillSession, drillSession } from '../session/drill-session.js';
import { drillResultsPath, earlierResults, keepResult } from '../store/drill-results.js';
import { type LoadedDrill, listDrills, loadDrill } from '../store/load-drill.js';
import { openRecording } from '../store/open-recording.js';
import { drillInLines } from './drill-in-lines.js';
import { chooseFace, type Face, type FaceOptions } from './face.js';
import { complain, say, sayLine, sayObject } from './say.js';
import { exitCodes, UserError } from './user-error.js';

interface DrillCommandOptions extends FaceOptions {
  readonly list?: boolean;
  readonly speed: number;
  readonly keep: boolean;
}

const words = english;
const usualSpeed = 5;

const examples = `
Examples:
  pinwalk drill --list
      the drills there are, easy ones first
  pinwalk drill loose-filter
      plays it on the screen; answers are the number keys
  pinwalk drill loose-filter --plain
      the same in lines; answers are typed, one a line`;

export const drillCommand = (): Command =>
  new Command('drill')
    .description('play a recorded session with its verdicts held back; you call them')
    .argument('[id or file]', 'the drill')
    .option('--list', 'list the drills that are known by id')
    .addOption(
      new Option('--speed <factor>', 'seconds of the session in one second, 0.25 to 50')
        .argParser(Number)
        .default(usualSpeed),
    )
    .option('--no-keep', 'keep no result')
    .option('--json', 'one JSON object per line on stdout; answers are read from standard input')
    .option('--plain', 'lines of text; answers are read from standard input')
    .addHelpText('after', examples)
    .action(drill);

const drill = async (
  idOrPath: string | undefined,
  options: DrillCommandOptions,
  command: Command,
): Promise<void> => {
  if (options.list) return list(options);
  if (idOrPath === undefined) command.error('which drill? `pinwalk drill --list` shows them');
  const { speed } = options;
  if (!(speed >= slowest && speed <= fastest)) {
    const why = english.refusals.speed(slowest, fastest);
    throw new UserError(english.refusals.behind('--speed', why), exitCodes.usage);
  }
  const face = chooseFace(options);
  const loaded = loadDrill(idOrPath);
  const { recording, close } = openRecording(loaded.sessionPath);
  try {
    await run(loaded, recording, face, options);
  } finally {
    close();
  }
};

const list = ({ json }: DrillCommandOptions): void => {
  for (const { id, content, path } of listDrills()) {
    const { title, level } = content;
    const line = `${id}  ${words.drill.level(level)}  ${cleanText(title, 120)}`;
    say(json, line, { id, title, level, path });
  }
};

const run = async (
  { content: drill }: LoadedDrill,
  recording: Recording,
  face: Face,
  { speed, keep }: DrillCommandOptions,
): Promise<void> => {
  const questions = planDrill(drill, recording.opened, eventsOf(recording));
  const onScreen = face === 'screen';
  const session = drillSession({
    recording,
    questions,
    clock: createMonotonicClock(),
    speed: onScreen ? speed : 'max',
    closeAtEnd: !onScreen,
  });
  const before = said(earlierResults(drill.id));
  if (onScreen) await showScreen(session, drill, recording, before);
  else await drillInLines(session, drill, before, face === 'json');
  const { view } = session.drill;
  // A drill left half way says nothing about who did it.
  if (view.marked.length < view.questions.length) {
    complain(words.drill.left(view.marked.length, view.questions.length));
    return;
  }
  const result = resultOf(drill.id, view, new Date().toISOString());
  if (face === 'json') sayObject({ type: 'drill-finished', ...result });
  else sayLine(words.drill.score(shownPoints(result.points), result.of));
  if (!keep) return;
  keepResult(result);
  if (face !== 'json') sayLine(words.drill.savedIn(drillResultsPath()));
};

function* eventsOf(recording: Recording): Generator<Numbered, void> {
  for (let at = 0; at < recording.count; at += 1) {
    const event = eventAt(recording, at);
    if (event !== null) yield event;
  }
}

const said = (earlier: readonly DrillResult[]): string => {
  const best = earlier.reduce<DrillResult | null>(
    (top, result) => (top === null || result.points > top.points ? result : top),
    null,
  );
  return best === null
    ? words.drill.firstTime
    : words.drill.earlier(earlier.length, shownPoints(best.points), best.of);
};

const showScreen = async (
  session: DrillSession,
  drill: Drill,
  { opened }: Recording,
  before: string,
): Promise<void> => {
  const { runDrill } = await import('../ui/drill/run-drill.js');
  await runDrill({
    session,
    briefing: {
      title: cleanText(drill.title, 120),
      briefing: cleanText(drill.briefing, 600),
      before,
    },
    words,
    profile: opened.profile.content,
    simulated: opened.simulated,
  });
};

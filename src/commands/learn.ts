// `learn`: expected values and limits from sessions of good boards, or from a shop's own notes.
import { Command, Option } from 'commander';
import { cleanText } from '../core/clean-text.js';
import type { Board } from '../core/learn/board.js';
import { confidence } from '../core/learn/learn-line.js';
import { type Learned, learnProfile } from '../core/learn/learn-profile.js';
import { rangeCoverage } from '../core/learn/range-coverage.js';
import type { Wanted } from '../core/learn/refuse-boards.js';
import { createToleranceFactors } from '../core/learn/tolerance-factors.js';
import {
  type MeasureFunction,
  measureFunctions,
  type Polarity,
  polarities,
} from '../core/reading.js';
import { programVersion } from '../core/version.js';
import {
  boardOutlies,
  boardRefused,
  lineLearned,
  pinStrays,
  profileWritten,
  simulatedBoards,
  valueApart,
  whatBoardsProve,
} from '../core/words/english-learn.js';
import { loadProfile } from '../store/load-definitions.js';
import { writeOut } from '../store/write-out.js';
import { configuration } from './configuration.js';
import { idFor, profileText, refuseOut } from './profile-file.js';
import { readBoards } from './read-boards.js';
import { complain, sayer } from './say.js';
import { exitCodes, UserError } from './user-error.js';

interface LearnCommandOptions {
  readonly profile: string;
  readonly csv?: readonly string[];
  readonly out?: string;
  readonly force?: boolean;
  readonly function?: MeasureFunction;
  readonly polarity?: Polarity;
  readonly keepOutliers?: boolean;
  readonly by?: string;
  readonly json?: boolean;
}

const examples = `
Examples:
  pinwalk learn good-1.jsonl good-2.jsonl good-3.jsonl --profile my-connector
      tells what would be expected; nothing is written
  pinwalk learn good-*.jsonl --profile my-connector --out my-connector-2.json
  pinwalk learn --csv notes.csv --profile my-connector --out my-connector-2.json
      a table with the columns pin,value (and unit, line): 1,389.6 or 2,0.47,V or 3,OL

Every session and every table counts as one good board. Two or three boards prove little; from five on
the limits are those of a tolerance interval for 95 % of good boards with 95 % confidence.`;

export const learnCommand = (): Command =>
  new Command('learn')
    .description('make expected values and limits from sessions of good boards')
    .argument('[sessions...]', 'saved sessions, one a board')
    .requiredOption('--profile <id or file>', 'the connector that was walked')
    .option('--csv <file...>', "a shop's own notes of a good board, pin by pin")
    .option('--out <file>', 'write the new profile here (default: only tell)')
    .option('--force', 'replace a file that is there already')
    .addOption(
      new Option('--function <name>', "what to learn (default: the profile's)").choices(
        measureFunctions,
      ),
    )
    .addOption(
      new Option('--polarity <name>', "which lead walked (default: the profile's)").choices(
        polarities,
      ),
    )
    .option('--keep-outliers', 'use boards and values that stand apart, too')
    .option('--by <name>', 'who learned it, for the provenance')
    .option('--json', 'one JSON object per line on stdout')
    .option('--plain', 'lines of text (the usual form)')
    .addHelpText('after', examples)
    .action(learn);

const learn = (
  sessions: readonly string[],
  options: LearnCommandOptions,
  command: Command,
): void => {
  const notes = options.csv ?? [];
  if (sessions.length + notes.length === 0) {
    command.error('name sessions of good boards, or give --csv FILE');
  }
  const { content: profile } = loadProfile(options.profile);
  const wanted: Wanted = {
    function: options.function ?? profile.measure.function,
    polarity: options.polarity ?? profile.measure.polarity,
  };
  const { out } = options;
  if (out !== undefined) refuseOut(out, [...sessions, ...notes], options.force ?? false);
  const boards = readBoards(sessions, notes, profile, wanted);
  const factor = createToleranceFactors();
  const outcome = learnProfile(boards, profile, {
    ...wanted,
    factor,
    outliers: options.keepOutliers ? 'keep' : 'leave-out',
    by: cleanText(options.by ?? configuration().technician ?? `pinwalk ${programVersion}`, 80),
    date: new Date().toISOString().slice(0, 10),
    ...idFor(out),
  });
  if (!outcome.ok) {
    throw new UserError(outcome.refused.map(boardRefused), exitCodes.badFile);
  }
  const { learned } = outcome;
  const { text, warnings } = profileText(learned.profile, out ?? options.profile);
  tell(learned, wanted.function, options);
  for (const warning of warnings) complain(warning);
  if (out !== undefined) writeOut(out, text, { force: options.force ?? false });
  tellEnd(learned, boards, factor, options);
};

const tell = (learned: Learned, measure: MeasureFunction, options: LearnCommandOptions): void => {
  const say = sayer(options);
  const isKept = options.keepOutliers ?? false;
  for (const line of learned.lines) {
    say(lineLearned(line, measure), { type: 'line-learned', ...line });
    if (options.json) continue;
    for (const apart of line.apart) say(`  ${valueApart(line.line, apart, measure)}`, {});
  }
  for (const board of learned.outlyingBoards) {
    say(boardOutlies(board, isKept), { type: 'board-flagged', ...board });
  }
  for (const pin of learned.strayPins) {
    say(pinStrays(pin, measure), { type: 'pin-flagged', ...pin });
  }
};

const tellEnd = (
  { profile, boards: used }: Learned,
  boards: readonly Board[],
  factorOf: (boards: number) => number,
  { out, ...options }: LearnCommandOptions,
): void => {
  const say = sayer(options);
  const n = used.length;
  const factor = n < 2 ? null : factorOf(n);
  const span = rangeCoverage(n, confidence);
  const isSimulated = boards.some(({ simulated }) => simulated);
  if (!options.json) {
    say(whatBoardsProve(n, factor, span), {});
    if (isSimulated) say(simulatedBoards, {});
  }
  const { id } = profile;
  say(profileWritten(id, out === undefined ? null : cleanText(out, 300)), {
    type: 'profile-learned',
    id,
    boards: used,
    toleranceFactor: factor,
    spanCovers: span,
    file: out ?? null,
    ...(out === undefined ? { profile } : {}),
  });
};

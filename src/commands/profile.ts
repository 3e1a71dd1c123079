// `profile`: begins one for a connector nobody has measured, and grows one from the first good board walked.
import { basename } from 'node:path';
import { Command, Option } from 'commander';
import { cleanText } from '../core/clean-text.js';
import { blankProfile, pinList } from '../core/profile/blank-profile.js';
import type { Profile } from '../core/profile/profile-format.js';
import {
  type MeasureFunction,
  measureFunctions,
  type Polarity,
  polarities,
} from '../core/reading.js';
import { programVersion } from '../core/version.js';
import { english } from '../core/words/english.js';
import { lineLearned } from '../core/words/english-learn.js';
import { writeOut } from '../store/write-out.js';
import { askAtTerminal } from './asking.js';
import { canAsk } from './face.js';
import { learnFromBoard } from './good-board.js';
import { idFor, profileText, refuseOut } from './profile-file.js';
import { askProfile, isCount, type NewProfile } from './profile-guide.js';
import { complain, sayLine, sayObject } from './say.js';
import { exitCodes, UserError } from './user-error.js';

interface Out {
  readonly force?: boolean;
  readonly by?: string;
  readonly json?: boolean;
}

interface NewOptions extends NewProfile, Out {
  readonly out: string;
  readonly function: MeasureFunction;
  readonly polarity: Polarity;
}

interface GrowOptions extends Out {
  readonly profile?: string;
  readonly out: string;
}

const examples = `
Examples:
  pinwalk profile new --out my-connector.json
      asks for pins, rows, grounds and names
  pinwalk profile new --out j7.json --pins 40 --grounds 1,4,20,21,40 --supplies 26,27
  pinwalk profile new --out p2.json --pins 6 --rows 1 --names GND,VDD,D_P,D_N,ID,GND
  pinwalk walk --link … --profile ./j7.json
      the first good board, with nothing to compare it with
  pinwalk profile grow SESSION --out j7-grown.json
      what that board read becomes what is expected`;

const outOptions = (command: Command): Command =>
  command
    .requiredOption('-o, --out <file>', 'the profile to write; it is named after the file')
    .option('--force', 'replace a file that is there already')
    .option('--by <name>', 'who made it, for the provenance')
    .option('--json', 'one JSON object on stdout')
    .option('--plain', 'lines of text (the usual form)');

export const profileCommand = (): Command =>
  new Command('profile')
    .description('begin a profile for a connector, or grow one from the first good board')
    .addHelpText('after', examples)
    .addCommand(newCommand())
    .addCommand(growCommand());

const newCommand = (): Command =>
  outOptions(
    new Command('new')
      .description('a profile with pins and nothing expected yet')
      .option('--title <text>', 'what the connector is called')
      .option('--pins <count>', 'how many pins')
      .addOption(new Option('--rows <count>', 'in how many rows (default: 2)').choices(['1', '2']))
      .addOption(
        new Option('--numbering <how>', 'how two rows are numbered (default: row-wise)').choices([
          'row-wise',
          'odd-even',
          'around',
        ]),
      )
      .option('--grounds <pins>', 'ground pins: 1,4,10-12')
      .option('--supplies <pins>', 'supply pins')
      .option('--unused <pins>', 'pins that lead nowhere')
      .option('--names <lines>', 'lines by pin number: GND,VDD,D_P,D_N')
      .addOption(
        new Option('--function <name>', 'what to measure')
          .choices(measureFunctions)
          .default('resistance'),
      )
      .addOption(
        new Option('--polarity <name>', 'which lead walks')
          .choices(polarities)
          .default('red-walks'),
      ),
  )
    .addHelpText('after', examples)
    .action(begin);

const growCommand = (): Command =>
  outOptions(
    new Command('grow')
      .description('expected values from the session of one good board')
      .argument('<session>', 'a saved session of a good board')
      .option('--profile <id or file>', 'the connector (default: what the session carries)'),
  )
    .addHelpText('after', examples)
    .action(grow);

const words = english.profile;

const begin = async (options: NewOptions): Promise<void> => {
  const { out, force = false, json } = options;
  const { id } = idFor(out);
  if (id === undefined) {
    throw new UserError(
      english.refusals.noProfileName(cleanText(basename(out), 80)),
      exitCodes.usage,
    );
  }
  refuseOut(out, [], force);
  if (options.pins === undefined && !canAsk({ json: json === true })) {
    throw new UserError(english.refusals.howManyPins, exitCodes.usage);
  }
  const told =
    options.pins === undefined
      ? await askAtTerminal((asking) => askProfile(options, asking, words))
      : options;
  const profile = build(id, told, options);
  const { text, warnings } = profileText(profile, out);
  for (const warning of warnings) complain(warning);
  writeOut(out, text, { force });
  const pins = profile.connector.pins.length;
  say(json, { type: 'profile-begun', id, pins, file: out }, [
    words.begun(id, pins, cleanText(out, 300)),
    words.next(cleanText(out, 300)),
  ]);
};

const build = (id: string, told: NewProfile, { by, ...options }: NewOptions): Profile => {
  const pins = told.pins ?? '';
  if (!isCount(pins)) throw new UserError(words.noCount(cleanText(pins, 20)), exitCodes.usage);
  try {
    return blankProfile({
      id,
      title: cleanText(told.title ?? words.untitled, 80),
      pins: Number(pins),
      rows: told.rows === '1' ? 1 : 2,
      numbering: (told.numbering ?? 'row-wise') as 'row-wise' | 'odd-even' | 'around',
      grounds: pinList(told.grounds ?? ''),
      supplies: pinList(told.supplies ?? ''),
      unused: pinList(told.unused ?? ''),
      names:
        (told.names ?? '') === '' ? [] : (told.names ?? '').split(',').map((one) => one.trim()),
      function: options.function,
      polarity: options.polarity,
      by: cleanText(by ?? `pinwalk ${programVersion}`, 80),
      date: new Date().toISOString().slice(0, 10),
    });
  } catch (error) {
    if (error instanceof RangeError) throw new UserError(error.message, exitCodes.usage);
    throw error;
  }
};

const grow = (session: string, { out, force = false, profile, by, json }: GrowOptions): void => {
  refuseOut(out, profile === undefined ? [session] : [session, profile], force);
  const learned = learnFromBoard({
    session,
    ...(profile === undefined ? {} : { profile }),
    ...(by === undefined ? {} : { by }),
    ...idFor(out),
  });
  const { text, warnings } = profileText(learned.profile, out);
  for (const warning of warnings) complain(warning);
  writeOut(out, text, { force });
  const { id, measure, demo } = learned.profile;
  const known = learned.lines.filter(({ outcome }) => outcome !== 'kept').length;
  const of = learned.lines.length;
  say(json, { type: 'profile-grown', id, boards: 1, lines: known, of, file: out }, [
    ...learned.lines.map((line) => lineLearned(line, measure.function)),
    words.grown(known, of, cleanText(out, 300)),
    words.oneBoard,
    ...(demo ? [words.simulated] : []),
  ]);
};

const say = (json: boolean | undefined, object: object, lines: readonly string[]): void => {
  if (json) sayObject(object);
  else lines.forEach(sayLine);
};

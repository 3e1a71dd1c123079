// `press`: a press test alone, on one line, paced by the program or at will.
import { Command } from 'commander';
import { partsToPress } from '../core/press/press-stage.js';
import type { Profile } from '../core/profile/profile-format.js';
import { english } from '../core/words/english.js';
import { accuracyOptions } from './accuracy-option.js';
import { settings } from './configuration.js';
import { noSuchLine } from './no-such-line.js';
import type { Alone, StartOptions } from './preparation.js';
import { prepareNew } from './prepare-new.js';
import { type RunOptions, runWalk } from './run-walk.js';
import { exitCodes, UserError } from './user-error.js';
import { cuesOption, functionOption, logPaceOption, polarityOption } from './usual-options.js';

interface PressOptions
  extends Omit<StartOptions, 'press' | 'groundCheck' | 'pads' | 'resume'>,
    RunOptions {
  readonly line: string;
  readonly part?: readonly string[];
  readonly free?: boolean;
}

const examples = `
Examples:
  pinwalk press --link virtual:demo --line LANE1_P
      the parts along the line in order, then bare board if anything answers
  pinwalk press --link serial:/dev/ttyUSB0?baud=9600 --driver stream-value-unit \\
    --profile my-connector.json --line D0_P --part FL2 R14 --cues speech
  pinwalk press --link virtual:demo --line LANE1_P --free
      press when you like; "t" or a pedal marks a press and its end, "d" ends the test
  pinwalk rerun SESSION --press LANE1_P --part FL2
      judges a saved press test again

Power off, battery disconnected. Press lightly, with an insulated tool.`;

export const pressCommand = (): Command =>
  accuracyOptions(
    new Command('press')
      .description('press-test the parts along one line: does the reading answer?')
      .requiredOption('--line <name>', 'the line that is not normal, as the profile names it')
      .option('--part <names...>', 'the parts to press, in order (default: those along the line)')
      .option('--free', 'no pacing: press when you like')
      .option(
        '--link <name>',
        'serial:PATH?baud=N, tcp://HOST:PORT, virtual:NAME, log:FILE, stdin:',
      )
      .option('--profile <id or file>', 'the connector that has the line')
      .option('--driver <id or file>', 'how to talk to the meter')
      .option('--session <file>', 'where to save (default: a new file in the data folder)')
      .addOption(functionOption())
      .addOption(polarityOption())
      .option('--wait', 'wait for a device that is not there yet')
      .addOption(logPaceOption())
      .addOption(cuesOption())
      .option('--json', 'one JSON object per line on stdout')
      .option('--plain', 'lines of text, without cursor control')
      .option('--readings', 'with --json: every reading too'),
  )
    .addHelpText('after', examples)
    .action(press);

const press = async (given: PressOptions): Promise<void> => {
  const options = { ...settings('link', 'driver', 'profile', 'cues'), ...given };
  const asked = { ...options, groundCheck: false, pads: false as const };
  const preparation = prepareNew(asked, (profile) => aloneOn(profile, options));
  await runWalk(preparation, options);
};

/** @throws UserError for a line that is on no pin, or a place without a name. */
const aloneOn = (profile: Profile, { line, part, free }: PressOptions): Alone => {
  const pin = profile.connector.pins.find((candidate) => candidate.line === line)?.pin;
  if (pin === undefined) throw noSuchLine(profile, line);
  const parts = part ?? partsToPress(profile, line);
  if (parts.some((name) => name.trim() === '')) {
    throw new UserError(english.refusals.partUnnamed, exitCodes.usage);
  }
  return { pin, line, parts: [...new Set(parts)], free: free === true };
};

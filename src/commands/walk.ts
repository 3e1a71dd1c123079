// `walk`: the job on one board, live.
import { Command, Option } from 'commander';
import { accuracyOptions } from './accuracy-option.js';
import { beforeWalkOptions } from './before-walk.js';
import { settings } from './configuration.js';
import { canAsk } from './face.js';
import { guideAtTerminal } from './guide-terminal.js';
import type { StartOptions } from './preparation.js';
import { prepareNew } from './prepare-new.js';
import { prepareResumed } from './prepare-resumed.js';
import { readReference } from './ready-option.js';
import { type RunOptions, runWalk } from './run-walk.js';
import {
  cuesOption,
  functionOption,
  logPaceOption,
  polarityOption,
  readPositive,
} from './usual-options.js';

interface WalkOptions extends StartOptions, RunOptions {}

const examples = `
Examples:
  pinwalk walk
      asks for the meter, its driver and the connector
  pinwalk walk --link virtual:demo
      the demo board on the virtual bench; no meter needed
  pinwalk walk --link serial:/dev/ttyUSB0?baud=9600 --driver stream-value-unit --profile demo
  pinwalk walk --link tcp://192.0.2.7:5025 --driver scpi-read --profile ./my-connector.json
  pinwalk walk --link stdin: --profile demo
      values typed or piped, one a line: 389.6, 4.7k, OL
  pinwalk walk --link virtual:demo?answers=pads --press each
      a technician who answers with reply pads: see "pinwalk pads"
  pinwalk walk --link … --compare GOOD-SESSION
      the donor board first, then the patient against what it read
  pinwalk walk --link … --donor-beside
      both boards at once, pin by pin: donor 1, patient 1, donor 2; the patient is held
      against what the donor has just read. Join both grounds to the ground lead
  pinwalk walk --link … --groups picture-data,control
      only the lines in question, and the grounds
  pinwalk walk --resume SESSION
      goes on at the same pin`;

export const walkCommand = (): Command => beforeWalkOptions(walkItself());

const walkItself = (): Command =>
  accuracyOptions(
    new Command('walk')
      .description('walk a connector pin by pin, hands-free, and save everything')
      .option(
        '--link <name>',
        'serial:PATH?baud=N, tcp://HOST:PORT, virtual:NAME, log:FILE, stdin:',
      )
      .option('--profile <id or file>', 'the connector to walk')
      .option('--compare <session>', 'a good board walked before: what it read is expected')
      .option('--donor-beside', 'a donor board on the bench too: each pin there first, then here')
      .option('--groups <list>', 'walk only the lines of these groups, and the grounds')
      .option('--driver <id or file>', 'how to talk to the meter')
      .option('--session <file>', 'where to save (default: a new file in the data folder)')
      .option('--resume <file>', 'go on with a saved session at the same pin')
      .addOption(functionOption())
      .addOption(polarityOption())
      .option(
        '--range <full scale>',
        'fixed range to ask for, in ohm or volt',
        readPositive('ohm or volt'),
      )
      .addOption(
        new Option('--press <when>', 'press tests: when asked for, or each line that is not normal')
          .choices(['asked', 'each'])
          .default('asked'),
      )
      .option('--pads <file>', 'reply pads to listen to (default: those learned last)')
      .option('--no-pads', 'listen to no reply pads')
      .option('--lead-zero', 'first hold the tips together: the leads are taken off every reading')
      .option(
        '--reference <value,percent>',
        'first try the meter on a known part: 100,1 is 100 Ω ± 1 %; in diode 0.6,5',
        readReference,
      )
      .option('--no-ground-check', 'begin with the first pin at once')
      .option('--wait', 'wait for a device that is not there yet')
      .addOption(logPaceOption())
      .addOption(cuesOption())
      .option('--stay', 'stay open when all pins are walked, also without a keyboard')
      .option('--json', 'one JSON object per line on stdout')
      .option('--plain', 'lines of text, without cursor control')
      .option('--readings', 'with --json: every reading too'),
  )
    .addHelpText('after', examples)
    .action(walk);

const walk = async (given: WalkOptions): Promise<void> => {
  const wanted = { ...settingsFor(given), ...given };
  const isAsked = wanted.link === undefined && wanted.resume === undefined && canAsk(given);
  const options = isAsked ? { ...wanted, ...(await guideAtTerminal(wanted)) } : wanted;
  const preparation =
    options.resume === undefined ? prepareNew(options) : prepareResumed(options, options.resume);
  await runWalk(preparation, options);
};

/** A session that is taken up again keeps to what it began with. */
const settingsFor = ({ resume, compare }: WalkOptions): Partial<WalkOptions> => {
  if (resume !== undefined) return settings('cues');
  return compare === undefined
    ? settings('cues', 'link', 'driver', 'profile')
    : settings('cues', 'link', 'driver');
};

// `recheck`: walks again what a saved session found bad and what was worked on, and compares before and after.
import { Command, Option } from 'commander';
import { recheckHeader } from '../core/recheck/recheck-header.js';
import { english } from '../core/words/english.js';
import { accuracyOptions } from './accuracy-option.js';
import { cautionOptions } from './before-walk.js';
import { settings } from './configuration.js';
import { readEarlier } from './earlier-session.js';
import type { StartOptions } from './preparation.js';
import { prepareRecheck } from './prepare-new.js';
import { type RunOptions, runWalk } from './run-walk.js';
import { say } from './say.js';
import { exitCodes, UserError } from './user-error.js';
import { cuesOption } from './usual-options.js';

interface RecheckOptions extends StartOptions, RunOptions {
  readonly list?: boolean;
}

const examples = `
Examples:
  pinwalk recheck session.jsonl --link serial:/dev/ttyUSB0?baud=9600 --driver stream-value-unit
  pinwalk recheck session.jsonl --list
      which pins would be walked again, and why
  pinwalk recheck demo.jsonl --link virtual:demo-reworked
      the demo board after rework, on the virtual bench

Wait until the board is cool and dry: a few lines that nobody touched are walked too and must read as before.`;

export const recheckCommand = (): Command => cautionOptions(recheckItself());

const recheckItself = (): Command =>
  accuracyOptions(
    new Command('recheck')
      .description('walk again what a saved session found bad, and compare')
      .argument('<session>', 'the saved session of the walk')
      .option('--link <name>', 'serial:PATH?baud=N, tcp://HOST:PORT, virtual:NAME, stdin:')
      .option('--driver <id or file>', 'how to talk to the meter (default: as before)')
      .option('--session <file>', 'where to save (default: a new file in the data folder)')
      .addOption(
        new Option(
          '--press <when>',
          'press tests beside those of places that answered before: when asked for, or each bad line',
        )
          .choices(['asked', 'each'])
          .default('asked'),
      )
      .option('--pads <file>', 'reply pads to listen to (default: those learned last)')
      .option('--no-pads', 'listen to no reply pads')
      .option('--lead-zero', 'first hold the tips together (default: where it was done before)')
      .option('--no-lead-zero', 'take no leads off the readings')
      .option('--no-ground-check', 'begin with the first pin at once')
      .option('--wait', 'wait for a device that is not there yet')
      .addOption(cuesOption())
      .option('--stay', 'stay open when all pins are walked, also without a keyboard')
      .option('--list', 'say which pins would be walked again, and why')
      .option('--json', 'one JSON object per line on stdout')
      .option('--plain', 'lines of text, without cursor control')
      .option('--readings', 'with --json: every reading too'),
  )
    .addHelpText('after', examples)
    .action(recheck);

const recheck = async (session: string, given: RecheckOptions): Promise<void> => {
  const options: RecheckOptions = {
    ...settings('cues', 'link'),
    ...given,
    logPace: 'real-time',
  };
  const earlier = readEarlier(session);
  const header = recheckHeader(earlier.state, earlier.rework, earlier.of);
  if (header === null) {
    throw new UserError(english.refusals.nothingToRecheck(session), exitCodes.badFile);
  }
  if (options.list === true) {
    for (const { pin, because, before } of header.pins) {
      const line = earlier.state.plan.pins.find((known) => known.pin === pin)?.line ?? '';
      say(options.json, english.rework.toWalk(pin, line, before.verdict, because), {
        pin,
        line,
        because,
        before,
      });
    }
    return;
  }
  const leadZero = options.leadZero ?? earlier.state.leads !== null;
  await runWalk(prepareRecheck({ ...options, leadZero }, earlier.opened, header), options);
};

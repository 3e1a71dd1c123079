// `pads plan`: resistors far from all that a connector reads, and from each other.
import { Command, Option } from 'commander';
import { formatReading } from '../core/measure/format-reading.js';
import { padCommands } from '../core/pads/pad.js';
import { planPads } from '../core/pads/plan-pads.js';
import { siUnit } from '../core/reading.js';
import { english } from '../core/words/english.js';
import { loadDriver, loadProfile } from '../store/load-definitions.js';
import { askedAccuracy } from './accuracy-option.js';
import { askedMeasure } from './asked-meter.js';
import { configuration } from './configuration.js';
import { type PadOptions, padOptions, rounded } from './pad-options.js';
import { sayLine, sayObject, sayTable } from './say.js';
import { textTable } from './text-table.js';
import { exitCodes, UserError } from './user-error.js';
import { readPositive } from './usual-options.js';

interface PlanOptions extends PadOptions {
  readonly series?: 'E12' | 'E24' | 'E96';
  readonly testCurrent?: number;
}

const words = english.pads;

export const planPadsExamples = `
Examples:
  pinwalk pads plan --profile demo
  pinwalk pads plan --profile my-connector.json --driver stream-value-unit --commands open,next,back
  pinwalk pads plan --profile demo --function diode --test-current 1 --commands open,next`;

export const planPadsCommand = (): Command =>
  padOptions(
    new Command('plan')
      .description('propose resistors far from all that a connector reads, and from each other')
      .option('--profile <id or file>', 'the connector to be walked')
      .addOption(
        new Option('--series <name>', 'preferred values (IEC 60063) to choose from')
          .choices(['E12', 'E24', 'E96'])
          .default('E24'),
      )
      .option('--test-current <mA>', 'what the diode test drives, in milliampere', readPositive()),
  )
    .addHelpText('after', planPadsExamples)
    .action(plan);

const plan = (options: PlanOptions): void => {
  const name = options.profile ?? configuration().profile;
  if (name === undefined) {
    throw new UserError(english.refusals.whichConnectorForPads, exitCodes.usage);
  }
  const profile = loadProfile(name).content;
  const driver = options.driver === undefined ? null : loadDriver(options.driver).content;
  const measure = askedMeasure(options, profile.measure);
  const accuracy = askedAccuracy(options, driver, measure.function);
  const overloadVolts = Math.max(0, ...accuracy.rows.map(({ fullScale }) => fullScale ?? 0));
  const diode =
    options.testCurrent === undefined
      ? {}
      : { diode: { testAmps: options.testCurrent / 1000, overloadVolts: overloadVolts || 2 } };
  const commands = options.commands ?? padCommands;
  const planned = planPads(profile, { ...measure, ...diode }, accuracy, commands, {
    ...(options.series === undefined ? {} : { series: options.series }),
  });
  if (!planned.planned) throw new UserError(planned.reason, exitCodes.usage);
  const { pads, distance, notes } = planned;
  if (options.json) {
    for (const { command, ohms, low, high } of pads) {
      const reads = { low: rounded(low), high: rounded(high) };
      sayObject({ command, ohms, ...reads, does: words.does[command] });
    }
    sayObject({ function: measure.function, distance: rounded(distance), notes });
    return;
  }
  const unit = siUnit(measure.function);
  const { columns } = words;
  sayTable(
    textTable([
      [columns.pad, columns.resistor, columns.reads, columns.does],
      ...pads.map(({ command, ohms, low, high }) => [
        command,
        formatReading(ohms, null, 'Ω'),
        words.between(formatReading(low, null, unit), formatReading(high, null, unit)),
        words.does[command],
      ]),
    ]),
  );
  sayLine('');
  sayLine(words.distance(Math.floor(100 * distance)));
  for (const note of notes) sayLine(words.note(note));
  sayLine('');
  for (const line of words.build) sayLine(line);
};

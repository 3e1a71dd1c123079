// What planning and learning reply pads have in common: the meter, what is measured, and which commands.
import { type Command, InvalidArgumentError } from 'commander';
import { type PadCommand, padCommands } from '../core/pads/pad.js';
import { quoted } from '../core/problems.js';
import type { MeasureFunction, Polarity } from '../core/reading.js';
import { type AccuracyOptions, accuracyOptions } from './accuracy-option.js';
import { functionOption, polarityOption, readPositive } from './usual-options.js';

export interface PadOptions extends AccuracyOptions {
  readonly profile?: string;
  readonly driver?: string;
  readonly function?: MeasureFunction;
  readonly polarity?: Polarity;
  readonly range?: number;
  readonly commands?: readonly PadCommand[];
  readonly json?: boolean;
}

export const padOptions = (command: Command): Command =>
  accuracyOptions(
    command
      .option('--driver <id or file>', 'the meter they are read with')
      .addOption(functionOption('what the walk measures'))
      .addOption(polarityOption())
      .option('--range <full scale>', 'fixed range of the walk, in ohm or volt', readPositive())
      .option('--commands <list>', `which ones (default: ${padCommands.join(',')})`, readCommands)
      .option('--json', 'one JSON object per line on stdout')
      .option('--plain', 'lines of text (the usual form)'),
  );

/** Six digits: more than any meter here shows. */
export const rounded = (value: number): number => Number(value.toPrecision(6));

const readCommands = (text: string): readonly PadCommand[] =>
  text.split(',').map((name) => {
    const command = padCommands.find((known) => known === name.trim());
    if (command !== undefined) return command;
    throw new InvalidArgumentError(
      `there is no pad ${quoted(name)}; known are ${padCommands.join(', ')}`,
    );
  });

// Options that several commands have, said and checked in one way.
import { InvalidArgumentError, Option } from 'commander';
import { cueModes } from '../core/cue-mode.js';
import { measureFunctions, polarities } from '../core/reading.js';

export const cuesOption = (): Option =>
  new Option('--cues <how>', 'what is heard (default: tones with a screen, else off)').choices(
    cueModes,
  );

export const logPaceOption = (): Option =>
  new Option('--log-pace <pace>', 'how fast log:FILE is read')
    .choices(['real-time', 'fast'])
    .default('real-time');

export const functionOption = (says = 'what to measure'): Option =>
  new Option('--function <name>', says).choices(measureFunctions);

export const polarityOption = (): Option =>
  new Option('--polarity <name>', 'which lead walks').choices(polarities);

/** @param of what the number counts, as it is to be said. */
export const readPositive =
  (of = '') =>
  (text: string): number => {
    const value = Number(text);
    if (value > 0 && Number.isFinite(value)) return value;
    throw new InvalidArgumentError(`write a positive number${of === '' ? '' : ` of ${of}`}`);
  };

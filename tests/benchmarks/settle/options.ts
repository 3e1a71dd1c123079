// The benchmark's options from the command line. Refuses what it does not know with one line.
import { parseArgs } from 'node:util';
import type { Mixture } from './mixture.js';
import { mixtureNamed, mixtures } from './mixtures/all.js';

export interface BenchOptions {
  readonly mixtures: readonly Mixture[];
  readonly seed: number;
  /** At least this many pins a mixture, unless `walks` says otherwise. */
  readonly pins: number;
  readonly walks: number | null;
  /** Run only this walk of the seed, counted from 0. */
  readonly only: number | null;
  readonly engine: 'in-process' | 'program' | 'none';
  readonly json: boolean;
  /** Print one line for each finding before the table. */
  readonly list: boolean;
  readonly dump: string | null;
}

export const usage = `npm run bench:settle -- [options]
  --pins N          at least N pins a mixture (3000)
  --walks N         exactly N walks a mixture instead
  --only K          only walk number K of the seed
  --seed S          whole number (1)
  --mixture NAME    ${mixtures.map(({ name }) => name).join(', ')} or all (common)
  --program         hold the built program (dist/main.js rerun) against it, not the modules in process
  --plain-only      only the plain rule
  --json            one JSON object a mixture
  --list            one line for each finding, before the table
  --dump DIR        write every walk with an error to DIR, the first departure marked
`;

const whole = (text: string, name: string): number => {
  if (!/^\d{1,9}$/u.test(text))
    throw new RangeError(`--${name} needs a whole number, not "${text}"`);
  return Number(text);
};

/** @throws RangeError or TypeError with one line that says what is wrong. */
export const benchOptions = (args: readonly string[]): BenchOptions | null => {
  const { values } = parseArgs({
    args: [...args],
    options: {
      pins: { type: 'string', default: '3000' },
      walks: { type: 'string' },
      only: { type: 'string' },
      seed: { type: 'string', default: '1' },
      mixture: { type: 'string', default: 'common' },
      program: { type: 'boolean', default: false },
      'plain-only': { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
      list: { type: 'boolean', default: false },
      dump: { type: 'string' },
      help: { type: 'boolean', default: false },
    },
  });
  if (values.help) return null;
  const program = values.program ? 'program' : 'in-process';
  return {
    mixtures: values.mixture === 'all' ? mixtures : [mixtureNamed(values.mixture)],
    seed: whole(values.seed, 'seed'),
    pins: whole(values.pins, 'pins'),
    walks: values.walks === undefined ? null : whole(values.walks, 'walks'),
    only: values.only === undefined ? null : whole(values.only, 'only'),
    engine: values['plain-only'] ? 'none' : program,
    json: values.json,
    list: values.list,
    dump: values.dump ?? null,
  };
};

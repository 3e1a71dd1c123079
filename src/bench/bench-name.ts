// Reads what stands after `virtual:`: a scenario, and perhaps how to run it, as in `demo?seed=3&rate=10`.
// Refuses anything it does not know in one line that says what would be right; makes nothing.
import { nearestName } from '../core/nearest-name.js';
import { quoted } from '../core/problems.js';
import { leastCounts, leastRate, mostCounts, mostRate } from './display.js';
import { type ScenarioName, scenarioNames } from './scenarios.js';

const paceNames = ['easy', 'usual', 'steady'] as const;
export type PaceName = (typeof paceNames)[number];
/** How the technician says that a line is open, and whatever else there is to say. */
const answerWays = ['ground-taps', 'key', 'pads'] as const;
export type AnswerWay = (typeof answerWays)[number];

/** Whether the technician, once all is walked, probes what the program proposes. */
const probeHabits = ['none', 'proposed'] as const;

export interface BenchName {
  readonly scenario: ScenarioName;
  /** What chance draws from: the same seed gives the same run. */
  readonly seed: number;
  readonly pace: PaceName;
  /** The hands go about so many times as fast. */
  readonly speed: number;
  readonly answers: AnswerWay;
  readonly probes: (typeof probeHabits)[number];
  /** A donor board lies beside the patient, and each pin is read on both. */
  readonly donor: boolean;
  /** Readings a second and display counts; absent: the driver's own. */
  readonly rate?: number;
  readonly counts?: number;
}

/** The message is one line, ready for the user. */
export class BenchNameError extends Error {
  override readonly name = 'BenchNameError';
}

export const usualBench: BenchName = {
  scenario: 'demo',
  seed: 1,
  pace: 'easy',
  speed: 1,
  answers: 'ground-taps',
  probes: 'none',
  donor: false,
};

/** @throws BenchNameError naming what is wrong and what would be right. */
export const parseBenchName = (text: string): BenchName => {
  const mark = text.indexOf('?');
  const name = mark < 0 ? text : text.slice(0, mark);
  const scenario = scenarioNames.find((known) => known === name);
  if (scenario === undefined) throw unknown('scenario', name, scenarioNames);
  let bench: BenchName = { ...usualBench, scenario };
  const given = new Set<string>();
  for (const pair of mark < 0 ? [] : text.slice(mark + 1).split('&')) {
    const [key = '', value = ''] = pair.split('=', 2);
    const option = Object.hasOwn(options, key) ? options[key] : undefined;
    if (option === undefined) throw unknown('option', key, Object.keys(options));
    if (given.has(key)) throw new BenchNameError(`virtual bench: ${key} is given twice`);
    given.add(key);
    bench = { ...bench, ...option(key, value) };
  }
  return bench;
};

type Option = (key: string, value: string) => Partial<BenchName>;

const numberBetween = (key: string, value: string, low: number, high: number): number => {
  const number = /^\d{1,10}(\.\d{1,6})?$/u.test(value) ? Number(value) : Number.NaN;
  if (!(number >= low && number <= high))
    throw new BenchNameError(
      `virtual bench: ${key} must be ${low} to ${high}, not ${quoted(value)}`,
    );
  return number;
};

const wholeBetween = (key: string, value: string, low: number, high: number): number => {
  const number = numberBetween(key, value, low, high);
  if (!Number.isInteger(number))
    throw new BenchNameError(`virtual bench: ${key} must be a whole number, not ${quoted(value)}`);
  return number;
};

const oneOf = <Name extends string>(key: string, value: string, names: readonly Name[]): Name => {
  const found = names.find((name) => name === value);
  if (found === undefined) throw unknown(key, value, names);
  return found;
};

const options: Readonly<Record<string, Option>> = {
  seed: (key, value) => ({ seed: wholeBetween(key, value, 0, 2 ** 32 - 1) }),
  pace: (key, value) => ({ pace: oneOf(key, value, paceNames) }),
  speed: (key, value) => ({ speed: numberBetween(key, value, 0.25, 20) }),
  rate: (key, value) => ({ rate: numberBetween(key, value, leastRate, mostRate) }),
  counts: (key, value) => ({ counts: wholeBetween(key, value, leastCounts, mostCounts) }),
  answers: (key, value) => ({ answers: oneOf(key, value, answerWays) }),
  donor: (key, value) => ({ donor: oneOf(key, value, ['beside', 'none']) === 'beside' }),
  probes: (key, value) => ({ probes: oneOf(key, value, probeHabits) }),
};

const unknown = (what: string, given: string, known: readonly string[]): BenchNameError => {
  const near = nearestName(given, known);
  const hint = near === undefined ? `known are ${known.join(', ')}` : `did you mean ${near}?`;
  return new BenchNameError(`virtual bench: there is no ${what} ${quoted(given)}; ${hint}`);
};

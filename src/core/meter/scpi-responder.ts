// Answers as a driver's SCPI meter would: one message line in, at most one answer line out, with the state of
// the instrument handed back. Pure: what the probes touch comes from the caller.
import { type MeasureFunction, measureFunctions } from '../reading.js';
import type { Driver } from './driver-format.js';
import { type Display, encodeReading, type Sayable } from './encode-reading.js';
import type { ErrorEntry } from './error-entry.js';
import { entryText, scpiErrors as errors, noError, queueError } from './error-queue.js';
import { readMessage, type ScpiMessage, splitMessages } from './scpi-header.js';
import { type ScpiCommand, type ScpiEffect, vocabularyOf } from './scpi-vocabulary.js';
import { parseSuffixed } from './suffix.js';

export interface ScpiMeterState {
  readonly function: MeasureFunction;
  /** Full scale of each fixed range; a function without one is under autorange. */
  readonly ranges: Readonly<Partial<Record<MeasureFunction, number>>>;
  readonly errors: readonly ErrorEntry[];
  /** The answer a trigger has made ready. */
  readonly pending: string | null;
}

export interface Sensed {
  readonly reading: Sayable;
  readonly display: Display;
}

/** What the caller supplies: who the meter is, and what it sees now (`range` null under autorange). */
export interface ScpiWorld {
  readonly identity: string;
  sense(measure: MeasureFunction, range: number | null): Sensed;
}

export interface ScpiResponder {
  readonly start: ScpiMeterState;
  /** The instrument after its function was switched by hand at the panel. */
  switched(state: ScpiMeterState, measure: MeasureFunction): ScpiMeterState;
  answer(
    state: ScpiMeterState,
    line: string,
    world: ScpiWorld,
  ): { readonly state: ScpiMeterState; readonly answer: string | null };
}

type Step = { readonly state: ScpiMeterState; readonly answer?: string };

const withError = (state: ScpiMeterState, error: ErrorEntry): Step => ({
  state: { ...state, errors: queueError(state.errors, error) },
});

type Found = { readonly effect: ScpiEffect; readonly argument?: string } | ErrorEntry;

const find = (vocabulary: readonly ScpiCommand[], message: ScpiMessage): Found => {
  const candidates = vocabulary.filter(({ header }) => header === message.header);
  for (const {
    parameters: [before, after],
    effect,
  } of candidates) {
    const given = message.parameters;
    if (after === undefined) {
      if (given === before) return { effect };
    } else if (given.startsWith(before) && given.endsWith(after)) {
      const argument = given.slice(before.length, given.length - after.length).trim();
      if (argument !== '') return { effect, argument };
    }
  }
  if (candidates.length === 0) return errors.undefinedHeader;
  return message.parameters === '' ? errors.missingParameter : errors.illegalParameter;
};

const rangeFor = (fullScales: readonly number[], argument: string): number | ErrorEntry => {
  const wanted = parseSuffixed(argument);
  if (!wanted) return errors.dataType;
  const holding = fullScales.filter((fullScale) => fullScale >= wanted.value * (1 - 1e-9));
  return holding.length > 0 ? Math.min(...holding) : errors.outOfRange;
};

const select = (
  state: ScpiMeterState,
  measure: MeasureFunction,
  range?: number,
): ScpiMeterState => {
  const { [measure]: _, ...others } = state.ranges;
  const ranges = range === undefined ? others : { ...others, [measure]: range };
  return { ...state, function: measure, ranges, pending: null };
};

/**
 * A meter that understands the common commands and those of its driver, in long or short form, and queues an
 * error for anything else. Queries of one line are answered joined by `;`, without a line end.
 * @throws TypeError when the driver does not speak SCPI.
 */
export const scpiResponder = (driver: Driver): ScpiResponder => {
  const { talk } = driver;
  if (talk.style !== 'scpi') throw new TypeError(`driver ${driver.id} does not speak SCPI`);
  const vocabulary = vocabularyOf(talk);
  const offered = measureFunctions.filter((measure) => talk.functions[measure]);
  const start: ScpiMeterState = {
    function: offered[0] ?? 'resistance',
    ranges: {},
    errors: [],
    pending: null,
  };

  const perform = (
    state: ScpiMeterState,
    effect: ScpiEffect,
    argument: string,
    world: ScpiWorld,
  ): Step => {
    const measured = (at: ScpiMeterState): string => {
      const { reading, display } = world.sense(at.function, at.ranges[at.function] ?? null);
      return encodeReading(driver, reading, display);
    };
    switch (effect.does) {
      case 'nothing':
        return { state };
      case 'identify':
        return { state, answer: world.identity };
      case 'clear':
        return { state: { ...state, errors: [], pending: null } };
      case 'reset':
        return { state: { ...start, errors: state.errors } };
      case 'say-done':
        return { state, answer: '1' };
      case 'say-function': {
        const answers = Object.entries(talk.functionQuery?.answers ?? {});
        const word = answers.find(([, measure]) => measure === state.function)?.[0] ?? 'NONE';
        return { state, answer: `"${word}"` };
      }
      case 'say-error': {
        const [first, ...rest] = state.errors;
        if (!first) return { state, answer: noError };
        return { state: { ...state, errors: rest }, answer: entryText(first) };
      }
      case 'select':
        return { state: select(state, effect.function) };
      case 'set-range': {
        const range = rangeFor(effect.fullScales, argument);
        if (typeof range !== 'number') return withError(state, range);
        if (effect.selects) return { state: select(state, effect.function, range) };
        return { state: { ...state, ranges: { ...state.ranges, [effect.function]: range } } };
      }
      case 'measure': {
        const at = { ...state, function: effect.function ?? state.function };
        return { state: at, answer: measured(at) };
      }
      case 'trigger': {
        const at = { ...state, function: effect.function ?? state.function };
        return { state: { ...at, pending: measured(at) } };
      }
      case 'fetch':
        if (state.pending === null) return withError(state, errors.stale);
        return { state, answer: state.pending };
    }
  };

  const answer: ScpiResponder['answer'] = (before, line, world) => {
    let state = before;
    const answers: string[] = [];
    for (const text of splitMessages(line)) {
      const found = find(vocabulary, readMessage(text));
      const step =
        'code' in found
          ? withError(state, found)
          : perform(state, found.effect, found.argument ?? '', world);
      state = step.state;
      if (step.answer !== undefined) answers.push(step.answer);
    }
    return { state, answer: answers.length > 0 ? answers.join(';') : null };
  };
  return { start, switched: select, answer };
};

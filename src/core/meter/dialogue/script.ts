// What is sent to a meter that answers, in which order, and what kind of answer each line expects. Made of the
// driver's data alone; says nothing about time.

import type { Driver } from '../driver-format.js';
import { type ShownFunction, shownFunction } from '../shown-function.js';
import { DialogueError, type Wanted } from './dialogue-types.js';

/**
 * `nothing`: a command. `reading`: the last question of a reading. `identity`, `errors` and `function` are answers
 * known by their form. `anything`: an answer that only has to be waited for.
 */
export type Expects = 'nothing' | 'anything' | 'identity' | 'errors' | 'function' | 'reading';

export interface Step {
  /** Without the line end. */
  readonly text: string;
  readonly expects: Expects;
}

export interface Script {
  readonly setUp: readonly Step[];
  readonly read: readonly Step[];
  /** Asked before a reading where it is due; undefined where the readings name their function. */
  readonly functionQuery:
    | {
        readonly step: Step;
        readonly everyS: number;
        /** Undefined where the text is no answer to this question. */
        shown(text: string): ShownFunction | undefined;
      }
    | undefined;
  /** A question whose answer cannot be mistaken for a reading; undefined where the meter has none. */
  readonly marker: Step | undefined;
  readonly keepAwake: { readonly step: Step; readonly everyS: number } | undefined;
  readonly pollS: number;
  readonly timeoutS: number;
  readonly sendEnd: string;
  /** Full scale of the fixed range that the set-up selects; undefined under autorange. */
  readonly range: number | undefined;
}

/** A question mark outside quotes makes a program message a query (IEEE 488.2). */
const isQuery = (text: string): boolean => text.replace(/"[^"]*"|'[^']*'/gu, '').includes('?');

const plain = (text: string): Step => ({ text, expects: isQuery(text) ? 'anything' : 'nothing' });

/** The listed full scale nearest above the wanted one, or the highest there is. */
export const chooseRange = (fullScales: readonly number[], wanted: number): number =>
  fullScales.reduce((best, scale) => {
    const holds = scale >= wanted;
    const bestHolds = best >= wanted;
    if (holds !== bestHolds) return holds ? scale : best;
    return holds === scale < best ? scale : best;
  });

const scpiScript = (driver: Driver, wanted: Wanted): Script => {
  if (driver.talk.style !== 'scpi') throw new TypeError(`driver ${driver.id} is not SCPI`);
  const { talk, wire } = driver;
  const measure = talk.functions[wanted.function];
  if (measure === undefined) {
    throw new DialogueError(
      `driver ${driver.id} has no ${wanted.function}; it has ${Object.keys(talk.functions).join(', ')}`,
    );
  }
  const identify: Step[] = talk.identify ? [{ text: talk.identify, expects: 'identity' }] : [];
  const errors: Step[] = talk.errorQueue ? [{ text: talk.errorQueue, expects: 'errors' }] : [];
  const fixed =
    measure.range && wanted.range !== undefined
      ? {
          command: measure.range.command,
          scale: chooseRange(measure.range.fullScales, wanted.range),
        }
      : undefined;
  const last = measure.read.length - 1;
  return {
    setUp: [
      ...talk.init.map(plain),
      ...identify,
      ...measure.select.map(plain),
      ...(fixed ? [plain(fixed.command.replaceAll('{range}', String(fixed.scale)))] : []),
      ...errors,
    ],
    read: measure.read.map((text, index) =>
      index === last ? { text, expects: 'reading' } : plain(text),
    ),
    functionQuery: talk.functionQuery && {
      step: { text: talk.functionQuery.send, expects: 'function' },
      everyS: talk.functionQuery.everyS,
      shown: (text) => shownFunction(talk, text),
    },
    marker: errors[0] ?? identify[0],
    keepAwake: talk.keepAwake && {
      step: plain(talk.keepAwake.send),
      everyS: talk.keepAwake.everyS,
    },
    pollS: talk.pollS,
    timeoutS: talk.timeoutS,
    sendEnd: wire.sendEnd,
    range: fixed?.scale,
  };
};

/** @throws DialogueError when the driver cannot measure what is wanted. */
export const scriptFor = (driver: Driver, wanted: Wanted): Script => {
  const { talk, wire } = driver;
  if (talk.style === 'scpi') return scpiScript(driver, wanted);
  if (talk.style === 'stream') throw new TypeError(`driver ${driver.id} streams`);
  return {
    setUp: [],
    read: [{ text: talk.key, expects: 'reading' }],
    functionQuery: undefined,
    marker: undefined,
    keepAwake: talk.keepAwake && {
      step: { text: talk.keepAwake.send, expects: 'nothing' },
      everyS: talk.keepAwake.everyS,
    },
    pollS: talk.pollS,
    timeoutS: talk.timeoutS,
    sendEnd: wire.sendEnd,
    range: undefined,
  };
};

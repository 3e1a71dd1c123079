// What an imitated SCPI meter understands: the commands of its driver, each with its effect, and the common
// commands every such instrument has. Anything else is an undefined header.
import { type MeasureFunction, measureFunctions } from '../reading.js';
import type { ScpiTalk } from './driver-format.js';
import { readMessage } from './scpi-header.js';

export type ScpiEffect =
  | {
      readonly does:
        | 'nothing'
        | 'identify'
        | 'clear'
        | 'reset'
        | 'say-done'
        | 'say-error'
        | 'say-function';
    }
  | { readonly does: 'select'; readonly function: MeasureFunction }
  | {
      readonly does: 'set-range';
      readonly function: MeasureFunction;
      readonly fullScales: readonly number[];
      /** True where the same header also selects the function, as `CONFigure` does. */
      readonly selects: boolean;
    }
  /** Without a function: the one that is selected. */
  | { readonly does: 'measure' | 'trigger' | 'fetch'; readonly function?: MeasureFunction };

export interface ScpiCommand {
  readonly header: string;
  /** Parameters before and after a `{range}`, or the whole parameters alone. */
  readonly parameters: readonly [string] | readonly [string, string];
  readonly effect: ScpiEffect;
}

export const rangePlace = '{range}';

const common: readonly [string, ScpiEffect][] = [
  ['*IDN?', { does: 'identify' }],
  ['*CLS', { does: 'clear' }],
  ['*RST', { does: 'reset' }],
  ['*OPC?', { does: 'say-done' }],
  ['*WAI', { does: 'nothing' }],
  ['SYSTem:ERRor?', { does: 'say-error' }],
  ['SYSTem:ERRor:NEXT?', { does: 'say-error' }],
];

const command = (text: string, effect: ScpiEffect): ScpiCommand => {
  const { header, parameters } = readMessage(text);
  const [before, after] = parameters.split(rangePlace.toUpperCase());
  return {
    header,
    parameters: after === undefined ? [parameters] : [before ?? '', after],
    effect,
  };
};

/** The functions in whose list of commands `text` stands. */
const ownersOf = (talk: ScpiTalk, list: 'select' | 'read', text: string): MeasureFunction[] =>
  measureFunctions.filter((measure) => talk.functions[measure]?.[list].includes(text));

const commandsOf = (talk: ScpiTalk, measure: MeasureFunction): ScpiCommand[] => {
  const offered = talk.functions[measure];
  if (!offered) return [];
  const { select, range, read } = offered;
  const owned = (list: 'select' | 'read', text: string) =>
    ownersOf(talk, list, text).length === 1 ? { function: measure } : {};
  const selecting = select.find((text) => ownersOf(talk, 'select', text).length === 1);
  const selectHeaders = select.map((text) => readMessage(text).header);
  const last = read.length - 1;

  return [
    ...select.map((text) =>
      command(
        text,
        text === selecting ? { does: 'select', function: measure } : { does: 'nothing' },
      ),
    ),
    ...(range
      ? [
          command(range.command, {
            does: 'set-range',
            function: measure,
            fullScales: range.fullScales,
            selects: selectHeaders.includes(readMessage(range.command).header),
          }),
        ]
      : []),
    ...read.map((text, index) => {
      const does = index < last ? 'trigger' : last === 0 ? 'measure' : 'fetch';
      return command(text, { does, ...owned('read', text) });
    }),
  ];
};

/** The first command whose header and parameters fit is the one meant. */
export const vocabularyOf = (talk: ScpiTalk): readonly ScpiCommand[] => [
  ...common.map(([text, effect]) => command(text, effect)),
  ...(talk.identify ? [command(talk.identify, { does: 'identify' })] : []),
  ...(talk.functionQuery ? [command(talk.functionQuery.send, { does: 'say-function' })] : []),
  ...(talk.errorQueue ? [command(talk.errorQueue, { does: 'say-error' })] : []),
  ...measureFunctions.flatMap((measure) => commandsOf(talk, measure)),
  ...[...talk.init, ...(talk.keepAwake ? [talk.keepAwake.send] : [])].map((text) =>
    command(text, { does: 'nothing' }),
  ),
];

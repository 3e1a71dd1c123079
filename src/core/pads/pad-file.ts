// The learned reply pads as a file: what each reads on which function, by whom it was read. Strict, like every file
// of this program; what the shape cannot say is checked beside it.
import { z } from 'zod';
import type { DefinitionKind } from '../definition/read-definition.js';
import type { Problem } from '../problems.js';
import { measureFunctions } from '../reading.js';
import { learnPads } from './learn-pads.js';
import { padCommands } from './pad.js';

const padsFormat = z.strictObject({
  format: z.literal('pinwalk-pads/1'),
  /** Pads read otherwise in another function. */
  function: z.enum(measureFunctions),
  /** ISO 8601. */
  learned: z.string().max(40),
  /** The driver of the meter they were learned with, or null. */
  driver: z.string().max(64).nullable(),
  pads: z
    .array(
      z.strictObject({
        command: z.enum(padCommands),
        /** What the meter reads on it, in the function's unit (ohm, volt). */
        value: z.number().positive().max(1e9),
        /** How well the same meter reads it twice. */
        standardUncertainty: z.number().nonnegative().max(1e9),
      }),
    )
    .min(1)
    .max(padCommands.length),
});

export type PadFile = z.infer<typeof padsFormat>;

/** Pads that cannot be told apart are no pads. */
const checkPads = ({ pads }: PadFile): readonly Problem[] =>
  learnPads(pads, null).problems.map(({ command, what }) => ({
    path: ['pads', pads.findLastIndex((pad) => pad.command === command)],
    what: `the pad "${command}": ${what}`,
    fix: 'learn the pads anew with `pinwalk pads learn`',
  }));

export const padsKind: DefinitionKind<PadFile> = {
  word: 'file of reply pads',
  format: padsFormat.shape.format.value,
  schema: padsFormat,
  check: checkPads,
};

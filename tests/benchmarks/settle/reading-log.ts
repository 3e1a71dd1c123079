// Writes inputs as the reading log of the design: one JSON object a line. Refuses inputs a log cannot hold.
import type { Input } from '../../../src/core/inputs.js';

const lineOf = (input: Input): string => {
  if (input.kind === 'reading') return JSON.stringify(input.reading);
  if (input.kind === 'act') return JSON.stringify({ t: input.t, mark: input.act.act });
  throw new RangeError(`a reading log holds no ${input.kind}`);
};

export const readingLog = (inputs: readonly Input[]): string =>
  inputs.map((input) => `${lineOf(input)}\n`).join('');

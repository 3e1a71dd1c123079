// Inputs in the order in which they came, grown one at a time without copying what is there: a free press test may
// take as many readings as its technician has patience.
import type { Input } from '../inputs.js';

export interface InputRecord {
  readonly full: readonly (readonly Input[])[];
  readonly open: readonly Input[];
}

export const emptyRecord: InputRecord = { full: [], open: [] };

const chunk = 256;

export const appended = ({ full, open }: InputRecord, input: Input): InputRecord =>
  open.length < chunk ? { full, open: [...open, input] } : { full: [...full, open], open: [input] };

export const recorded = ({ full, open }: InputRecord): readonly Input[] => [
  ...full.flat(),
  ...open,
];

// The few events the scorer reads, in the names and fields the design fixes; everything else is passed over.
// A line that should be such an event and is not is refused.
import { z } from 'zod';
import { verdicts } from '../../../src/core/verdict.js';

const settled = z.looseObject({
  type: z.literal('pin-settled'),
  t: z.number(),
  pin: z.string(),
  value: z.number().optional(),
  overload: z.literal(true).optional(),
  standardUncertainty: z.number().nullable().optional(),
  /** Times of the first and last reading used, where the program tells them. */
  from: z.number().optional(),
  to: z.number().optional(),
});

const judged = z.looseObject({
  type: z.literal('pin-judged'),
  t: z.number(),
  pin: z.string(),
  verdict: z.enum(verdicts),
  confidence: z.number().optional(),
});

const other = z.looseObject({ type: z.string(), t: z.number().optional() });

export interface Settled {
  readonly type: 'pin-settled';
  readonly t: number;
  readonly pin: string;
  readonly value?: number | undefined;
  readonly overload?: true | undefined;
  readonly to?: number | undefined;
}

export interface Judged {
  readonly type: 'pin-judged';
  readonly t: number;
  readonly pin: string;
  readonly verdict: (typeof verdicts)[number];
}

export type ScoredEvent = Settled | Judged | { readonly type: string };

export const isSettled = (event: ScoredEvent): event is Settled => event.type === 'pin-settled';
export const isJudged = (event: ScoredEvent): event is Judged => event.type === 'pin-judged';

/** @throws ZodError for a broken event, SyntaxError for a line that is no JSON. */
export const scoredEvent = (line: string): ScoredEvent => {
  const event = other.parse(JSON.parse(line));
  if (event.type === 'pin-settled') return settled.parse(event);
  if (event.type === 'pin-judged') return judged.parse(event);
  return event;
};

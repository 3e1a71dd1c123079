// What was read at a place and what it means, as every event that tells of it says so.
import { z } from 'zod';
import { measureFunctions } from './reading.js';

export const verdicts = [
  'normal',
  'low',
  'high',
  'short',
  'open',
  'unsure',
  'wobble',
  'unread',
] as const;
export type Verdict = (typeof verdicts)[number];

export const nextActions = [
  'hold-longer',
  'retake',
  'change-range',
  'change-function',
  'compare-mate',
  'discharge',
] as const;
export type NextAction = (typeof nextActions)[number];

export const expectedBounds = z.union([
  z.literal('overload'),
  z.strictObject({ nominal: z.number(), low: z.number(), high: z.number() }),
  z.null(),
]);
export type ExpectedBounds = z.infer<typeof expectedBounds>;

/** What a touch read, once it had settled. */
export const settledFields = {
  value: z.number().optional(),
  overload: z.literal(true).optional(),
  standardUncertainty: z.number().nonnegative().nullable(),
  readings: z.int().nonnegative(),
  function: z.enum(measureFunctions),
  range: z.number().optional(),
  resolution: z.number().optional(),
  /** Times of the first and last reading used. */
  from: z.number(),
  to: z.number(),
};

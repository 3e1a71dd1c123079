// What is done with meter and leads before the first touch, and what came of it.
import { z } from 'zod';
import { readySteps } from '../inputs.js';
import { measureFunctions, readingFlags } from '../reading.js';

/** In the walk's unit, and as a fraction. */
export const knownReference = z.strictObject({
  value: z.number().positive(),
  tolerance: z.number().positive().max(1),
});

const leadZeroRefusal = z.discriminatedUnion('because', [
  z.strictObject({ because: z.literal('too-few'), readings: z.number(), needed: z.number() }),
  z.strictObject({ because: z.literal('wrong-function'), function: z.enum(measureFunctions) }),
  z.strictObject({ because: z.literal('flagged'), flag: z.enum(readingFlags) }),
  z.strictObject({ because: z.literal('not-touching') }),
  z.strictObject({
    because: z.literal('unsteady'),
    spreadOhms: z.number(),
    limitOhms: z.number(),
  }),
  z.strictObject({ because: z.literal('negative'), ohms: z.number() }),
  z.strictObject({ because: z.literal('too-large'), ohms: z.number(), limitOhms: z.number() }),
]);

const figures = { error: z.number(), limit: z.number() };
const referenceOutcome = z.union([
  z.strictObject({ ok: z.literal(true), ...figures }),
  z.strictObject({
    ok: z.literal(false),
    because: z.enum(['reads-high', 'reads-low', 'another-part', 'proves-nothing']),
    ...figures,
  }),
  z.strictObject({ ok: z.literal(false), because: z.enum(['conducts-not', 'shorted']) }),
]);

export const readyBodies = {
  'ready-asked': z.strictObject({ step: z.enum(readySteps) }),
  /** What is taken off every resistance read from here on, in ohm. */
  'lead-zeroed': z.strictObject({
    ohms: z.number(),
    standardUncertainty: z.number().nonnegative(),
    degreesOfFreedom: z.number().positive(),
    readings: z.int().positive(),
  }),
  'lead-zero-refused': z.strictObject({ refused: leadZeroRefusal }),
  /** A known part was read, without the leads where they were zeroed. What is not `ok` keeps the walk from beginning. */
  'reference-checked': z.strictObject({
    known: knownReference,
    value: z.number(),
    standardUncertainty: z.number().nonnegative(),
    outcome: referenceOutcome,
  }),
  'ready-left': z.strictObject({ step: z.enum(readySteps) }),
} as const;

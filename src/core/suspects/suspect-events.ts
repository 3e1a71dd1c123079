// Suspects and probes along a line in the session file.
import { z } from 'zod';
import { probeSides } from '../inputs.js';
import { expectedBounds, nextActions, settledFields, verdicts } from '../verdict.js';

const pin = z.string();
const line = z.string();
const probability = z.number().min(0).max(1);

export const suspectBodies = {
  /** What may be at fault, from all verdicts, press findings and probes so far; likeliest first. */
  'suspects-ranked': z.strictObject({
    suspects: z.array(
      z.strictObject({
        where: z.enum(['joint', 'part', 'chip', 'lead']),
        id: z.string(),
        lines: z.array(line),
        /** That it is at fault, alone or beside others: these need not sum to 1. */
        probability,
      }),
    ),
    /** The likeliest is the one that was said before, or none is likely enough to be said. */
    quiet: z.literal(true).optional(),
    /** Nothing is at fault. */
    none: probability,
    /** Something is at fault that the profile does not name. */
    other: probability,
    /** The probe that tells most for its effort, or null where none is worth it. */
    next: z
      .strictObject({
        probe: z.enum(['retake', 'other-ground', 'place', 'press']),
        line,
        pin: pin.optional(),
        part: z.string().optional(),
        side: z.enum(probeSides).optional(),
        /** Bits expected about which places are at fault. */
        gain: z.number().nonnegative(),
        /** In retakes of a pin. */
        effort: z.number().positive(),
      })
      .nullable(),
  }),
  /** The next touch that settles is of this place, or of this pin once more, and no step of the walk. */
  'probe-begun': z.strictObject({
    probe: z.enum(['retake', 'other-ground', 'place']),
    line,
    pin: pin.optional(),
    part: z.string().optional(),
    side: z.enum(probeSides).optional(),
  }),
  /** What was read at a place along a line; `near` is the side of the part towards the pin. */
  'place-judged': z.strictObject({
    line,
    /** Null at the chip. */
    part: z.string().nullable(),
    side: z.enum(probeSides),
    ...settledFields,
    verdict: z.enum(verdicts),
    confidence: probability,
    expected: expectedBounds,
    advice: z.enum(nextActions).optional(),
  }),
  'probe-ended': z.strictObject({ reason: z.enum(['done', 'given-up']) }),
} as const;

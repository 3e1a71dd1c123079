// Press tests in the session file: cues, places, what pressing did, and what it comes to.
import { z } from 'zod';
import { cueNames } from '../inputs.js';
import { pressFindings } from './decide-press.js';

const t = z.number();
const pin = z.string();
const line = z.string();
const probability = z.number().min(0).max(1);

export const pressBodies = {
  'cue-given': z.strictObject({
    cue: z.enum(cueNames),
    /** The place under the tool, where the walk itself gave the cue; null where no part is named. */
    place: z.string().nullable().optional(),
  }),
  /** A press test begins on the pin that was read last; `places` are the parts along its line. */
  'press-begun': z.strictObject({
    pin,
    line,
    places: z.array(z.string()),
    /** Present where the technician presses at will, without cues. */
    free: z.literal(true).optional(),
  }),
  /** In a free press test the line came to read what it should, or no longer does. */
  'reading-returned': z.strictObject({ line, value: z.number() }),
  'reading-lost': z.strictObject({ line, value: z.number().nullable() }),
  /** What the line did while it was pressed at will. */
  'press-traced': z.strictObject({
    line,
    part: z.string().nullable(),
    /** Where it stood longest: at its normal (`contact`), or not; null without readings. */
    rests: z.enum(['contact', 'none']).nullable(),
    /** Times away from there; `value` is their median, null for overload. */
    excursions: z.array(z.strictObject({ from: t, to: t, value: z.number().nullable() })),
    medianDwell: z.number().nonnegative().nullable(),
    /** At least three, and their values agree. */
    repeats: z.boolean(),
    /** Presses the technician marked, against the times between; null without marks. */
    marked: z
      .strictObject({
        presses: z.int().nonnegative(),
        awayPressed: z.int().nonnegative(),
        awayBetween: z.int().nonnegative(),
        pValue: probability,
      })
      .nullable(),
  }),
  /** The place to press next (null: any, the profile names none), with all cues it may take. */
  'press-moved': z.strictObject({
    place: z.string().nullable(),
    sham: z.boolean(),
    cues: z.array(z.strictObject({ t, cue: z.enum(cueNames) })),
  }),
  /** What pressing a part (or bare board, or nothing named) did to a line's reading. */
  'press-judged': z.strictObject({
    line,
    part: z.string().nullable(),
    finding: z.enum(pressFindings),
    cycles: z.int().nonnegative(),
    /** One-sided and raw. */
    pValue: probability,
    /** For repeated looks and both directions. */
    adjustedPValue: probability,
    /** Cycles that answered where an answer must come. */
    answered: z.int().nonnegative(),
    /** Median values while pressed and released, in the function's unit; null where most show none. */
    pressedValue: z.number().nullable(),
    releasedValue: z.number().nullable(),
  }),
  /** All places pressed on one line, held against each other. */
  'press-compared': z.strictObject({
    line,
    outcome: z.enum(['one', 'tied', 'all', 'none']),
    parts: z.array(z.string()),
    shamPressed: z.boolean(),
  }),
  'press-ended': z.strictObject({ pin, reason: z.enum(['done', 'given-up']) }),
} as const;

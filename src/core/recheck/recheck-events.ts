// A recheck in the session file: why each pin is walked again and what it read before, and what came of it.
import { z } from 'zod';
import { shiftTold } from '../context/shift-format.js';
import { verdicts } from '../verdict.js';

/** Why a pin is walked again. */
export const recheckReasons = [
  'bad',
  'mate',
  'part',
  'heat',
  'supply',
  /** Read well and was not touched: must read as before. */
  'control',
  /** A ground on the way, so that the walk knows where it is. */
  'anchor',
] as const;
export type RecheckReason = (typeof recheckReasons)[number];

export const differences = ['changed', 'unchanged', 'newly-bad', 'unknown'] as const;
export type Difference = (typeof differences)[number];

/** Outcome of a recheck. `wait`: untouched lines read otherwise than before, so the board is warm or wet. */
export const recheckOutcomes = ['good', 'wait', 'bad', 'incomplete'] as const;
export type RecheckOutcome = (typeof recheckOutcomes)[number];

const reading = z.strictObject({
  verdict: z.enum(verdicts),
  value: z.number().optional(),
  overload: z.literal(true).optional(),
  standardUncertainty: z.number().nonnegative().nullable(),
});
const reasons = z.array(z.enum(recheckReasons)).min(1);

/** What the session that is opened for a recheck says of it. */
export const recheckHeader = z.strictObject({
  of: z.strictObject({
    /** The file's own name, without folders. */
    file: z.string(),
    /** Chain value after its first line: the same however long it grows. 64 hex digits. */
    begins: z.string(),
    /** Chain value over every line at the time. */
    fingerprint: z.string(),
  }),
  pins: z.array(z.strictObject({ pin: z.string(), because: reasons, before: reading })).min(1),
  /** How the meter read beside what is expected: too few lines are walked again to tell it anew. */
  shifts: z.strictObject({ signal: shiftTold, supply: shiftTold }).optional(),
  /** Places to be pressed again: they answered to pressing before. */
  press: z.array(z.strictObject({ line: z.string(), part: z.string().nullable() })),
});

export const recheckBodies = {
  /** An untouched line against what it read before; `score` is a normalised error. */
  'control-compared': z.strictObject({
    pin: z.string(),
    line: z.string(),
    outcome: z.enum(['as-before', 'moved']),
    score: z.number().nonnegative().nullable(),
  }),
  'recheck-compared': z.strictObject({
    pins: z.array(
      z.strictObject({
        pin: z.string(),
        line: z.string(),
        because: reasons,
        before: reading,
        after: reading,
        difference: z.enum(differences),
        score: z.number().nonnegative().nullable(),
      }),
    ),
    controls: z.enum(['as-before', 'moved', 'unread']),
    press: z.array(
      z.strictObject({
        line: z.string(),
        part: z.string().nullable(),
        outcome: z.enum(['stays', 'moves', 'unclear', 'not-pressed']),
      }),
    ),
    outcome: z.enum(recheckOutcomes),
  }),
} as const;

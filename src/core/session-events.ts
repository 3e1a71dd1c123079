// Beginning, going on and end of a session in its file: what was walked, with what, and how exact it is.
import { z } from 'zod';
import { readySteps } from './inputs.js';
import { learnedPad } from './pads/reply-events.js';
import { donorWays } from './profile/donor.js';
import { profileFormat } from './profile/profile-format.js';
import { measureFunctions, polarities } from './reading.js';
import { knownReference } from './ready/ready-events.js';
import { recheckHeader } from './recheck/recheck-events.js';

export const sessionFormat = 'pinwalk-session/1';

const pin = z.string();
const line = z.string();
const source = z.strictObject({ id: z.string(), sha256: z.string() });

/** ±(percent of reading + counts of the last digit), per range where the driver tells them apart. */
const accuracy = z.strictObject({
  from: z.enum(['driver', 'option', 'assumed']),
  /** Display full scale in counts; infers the resolution where a reading does not tell it. */
  fullScaleCounts: z.int().positive(),
  rows: z
    .array(
      z.strictObject({
        /** Full scale in the function's SI unit; null for any range. */
        fullScale: z.number().positive().nullable(),
        resolution: z.number().positive().nullable(),
        percent: z.number().nonnegative(),
        counts: z.number().nonnegative(),
      }),
    )
    .min(1),
});
export type AccuracyStatement = z.infer<typeof accuracy>;

export const sessionBodies = {
  'session-opened': z.strictObject({
    format: z.literal(sessionFormat),
    program: z.string(),
    /** ISO 8601; null in a rerun, whose log knows no wall time. */
    wallTime: z.string().nullable(),
    zone: z.string().nullable(),
    link: z.string(),
    simulated: z.boolean(),
    profile: source.extend({ content: profileFormat }),
    driver: source.nullable(),
    measure: z.strictObject({ function: z.enum(measureFunctions), polarity: z.enum(polarities) }),
    accuracy,
    /** Jitters the cues of press tests; a session without it has none to give. */
    seed: z.int().nonnegative().optional(),
    /** When a line that is not normal is press-tested: when asked for (the usual), or each one. */
    pressTests: z.enum(['asked', 'each']).optional(),
    /** The reply pads that are listened to, as they were learned: in the function's unit. */
    pads: z.array(learnedPad).optional(),
    /** The session is one press test and no walk: the pin it is made on, the places to press, at will or paced. */
    pressAlone: z
      .strictObject({ pin, line, parts: z.array(z.string()), free: z.boolean() })
      .optional(),
    /** False where the first contact belongs to the first pin: no ground check comes before. */
    groundCheck: z.boolean(),
    /** What is done with the leads before that, in order. */
    ready: z.array(z.enum(readySteps)).optional(),
    /** A part that the meter can be tried on. */
    reference: knownReference.optional(),
    /** The only pins walked, in the profile's order; absent where all are. */
    pins: z.array(pin).min(1).optional(),
    /** A donor board is read beside the patient, pin by pin, and first; absent where there is none. */
    donor: z.enum(donorWays).optional(),
    /** A walk of what an earlier session put in question. */
    recheck: recheckHeader.optional(),
    /** The customer's data was taken out of the session of this fingerprint. */
    redacted: z.strictObject({ of: z.string() }).optional(),
  }),
  'session-resumed': z.strictObject({
    program: z.string(),
    wallTime: z.string(),
    zone: z.string(),
    /** Bytes of an unfinished last line that were found and kept aside. */
    tornBytes: z.int().nonnegative(),
    /** What for: to go on walking (where left out), or to add to the record of a walk that is over. */
    work: z.enum(['walk', 'record']).optional(),
  }),
  'session-closed': z.strictObject({ reason: z.enum(['finished', 'left']) }),
} as const;

// What the session file says of the job around the walk: who brought what and why, what was confirmed and measured
// before the first reading, what was observed and which groups that puts in question. Part of the public format.
import { z } from 'zod';

export const dataMatters = ['yes', 'no', 'unknown'] as const;
export type DataMatters = (typeof dataMatters)[number];

export const answers = ['yes', 'no', 'unknown'] as const;
/** What was seen when the technician looked; `unknown` where nobody could. */
export type Answer = (typeof answers)[number];

/** Longest text of one field, in code points: a page or so. */
export const longestText = 4000;
const text = z.string().max(longestText);

/** Everything that may be noted at intake, each field for itself; an empty text takes back what was noted. */
export const intakeFields = z.strictObject({
  ticket: text.optional(),
  device: text.optional(),
  symptom: text.optional(),
  /** Earlier repair, liquid, drop. */
  history: text.optional(),
  /** Under the microscope, before anything was touched. */
  seen: text.optional(),
  dataMatters: z.enum(dataMatters).optional(),
});
export type IntakeFields = z.infer<typeof intakeFields>;

const share = z.number().min(0).max(1);
const group = z.strictObject({
  group: z.string(),
  /** Sum of the probabilities of the symptoms that say so. */
  probability: share,
});

export const jobBodies = {
  /** Fields that are there replace what was noted before; the others stay. */
  'intake-noted': intakeFields,
  'photo-attached': z.strictObject({
    /** As it was named, cleaned; the picture itself stays where it is. */
    file: z.string(),
    sha256: z.string().regex(/^[0-9a-f]{64}$/u),
    bytes: z.int().nonnegative(),
  }),
  'caution-confirmed': z.strictObject({
    caution: z.string(),
    /** The words that were confirmed. */
    says: z.string(),
    by: z.enum(['keyboard', 'option']),
  }),
  'residual-measured': z.strictObject({
    /** The supply line the probe was held on; null where the profile names none. */
    line: z.string().nullable(),
    pin: z.string().optional(),
    volts: z.number(),
    /** At or under this, in volt and either polarity, the next function may be chosen. */
    limit: z.number().positive(),
    by: z.enum(['meter', 'typed']),
  }),
  'residual-skipped': z.strictObject({ reason: z.string() }),
  'symptom-observed': z.strictObject({
    observation: z.string(),
    /** The question as it was asked. */
    asks: z.string(),
    answer: z.enum(answers),
  }),
  /** What the observations so far say of the profile's symptoms and groups; likeliest first. */
  'groups-proposed': z.strictObject({
    symptoms: z.array(z.strictObject({ id: z.string(), says: z.string(), probability: share })),
    /** Something the profile's symptoms do not name. */
    other: share,
    walkFirst: z.array(group),
    leaveAlone: z.array(group),
    /** How many times as likely each answer is under the likeliest symptom as under the others together. */
    because: z.array(
      z.strictObject({
        observation: z.string(),
        answer: z.enum(['yes', 'no']),
        factor: z.number().positive(),
      }),
    ),
    /** The observation not made yet that would tell most, in bits; null where none would tell. */
    next: z.strictObject({ observation: z.string(), gain: z.number().nonnegative() }).nullable(),
  }),
} as const;

// Everything that can have happened, in the words of the session file. Names and fields are a public format:
// they are added to, never changed. `t` is the time of the reading or act that decided the event.
import { z } from 'zod';
import { reasons } from './context/reasons.js';
import { shiftClasses } from './context/shift-class.js';
import { actNames, cueNames, linkChanges, probeSides } from './inputs.js';
import { jobBodies } from './job/job-events.js';
import { padCommands } from './pads/pad.js';
import { pressFindings } from './press/decide-press.js';
import { profileFormat } from './profile/profile-format.js';
import { measureFunctions, polarities, type Reading } from './reading.js';
import { recheckShapes } from './recheck/recheck-events.js';
import { reworkBodies } from './rework/rework-events.js';

export const sessionFormat = 'pinwalk-session/1';

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

export const questions = ['open', 'same-or-next', 'shifted'] as const;
export type Question = (typeof questions)[number];

/** Why the walk refuses to judge what it reads, until that changes. */
export const holdReasons = [
  'flag-hold',
  'flag-relative',
  'flag-minmax',
  'frozen-display',
  'wrong-function',
  'negative',
  'ground-lost',
] as const;
export type HoldReason = (typeof holdReasons)[number];

export const nextActions = [
  'hold-longer',
  'retake',
  'change-range',
  'change-function',
  'compare-mate',
  'discharge',
] as const;
export type NextAction = (typeof nextActions)[number];

const t = z.number();
const pin = z.string();
const line = z.string();
const probability = z.number().min(0).max(1);
const reply = z.enum(padCommands);
/** A place along a line; `part` is left out at the chip. */
const place = z.strictObject({ part: z.string().optional(), side: z.enum(probeSides) });
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

export const expectedBounds = z.union([
  z.literal('overload'),
  z.strictObject({ nominal: z.number(), low: z.number(), high: z.number() }),
  z.null(),
]);
export type ExpectedBounds = z.infer<typeof expectedBounds>;

const recheck = recheckShapes(z.enum(verdicts));
/** What a touch read, once it had settled. */
const settled = {
  value: z.number().optional(),
  overload: z.literal(true).optional(),
  standardUncertainty: z.number().nonnegative().nullable(),
  readings: z.int().nonnegative(),
  function: z.enum(measureFunctions),
  range: z.number().optional(),
  resolution: z.number().optional(),
  /** Times of the first and last reading used. */
  from: t,
  to: t,
};

/** Of the factor, or in volt; with the pins and independent groups that agree. */
const toldShift = {
  standardUncertainty: z.number().nonnegative(),
  pins: z.int().positive(),
  groups: z.int().positive(),
};

const bodies = {
  ...reworkBodies,
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
    pads: z
      .array(
        z.strictObject({
          command: reply,
          value: z.number().positive(),
          standardUncertainty: z.number().nonnegative(),
        }),
      )
      .optional(),
    /** The session is one press test and no walk: the pin it is made on, the places to press, at will or paced. */
    pressAlone: z
      .strictObject({ pin, line, parts: z.array(z.string()), free: z.boolean() })
      .optional(),
    /** False where the first contact belongs to the first pin: no ground check comes before. */
    groundCheck: z.boolean(),
    /** The only pins walked, in the profile's order; absent where all are. */
    pins: z.array(pin).min(1).optional(),
    /** A walk of what an earlier session put in question. */
    recheck: recheck.header.optional(),
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
  'meter-spoke': z.strictObject({
    says: z.enum(['identity', 'error', 'no-answer']),
    text: z.string(),
  }),
  'link-changed': z.strictObject({ change: z.enum(linkChanges), detail: z.string().optional() }),
  'file-changed': z.strictObject({
    change: z.enum(['blocked', 'writable']),
    detail: z.string(),
  }),
  'act-taken': z.strictObject({
    act: z.enum(actNames),
    pin: pin.optional(),
    text: z.string().optional(),
    line: line.optional(),
    part: z.string().optional(),
    side: z.enum(probeSides).optional(),
    /** Given by a reply pad; a key or pedal where it is left out. */
    by: z.literal('pad').optional(),
  }),
  /** A double touch on a reply pad: echoed, and not carried out yet. */
  'reply-asked': z.strictObject({ reply }),
  /** It counts: what follows from it comes next. */
  'reply-given': z.strictObject({ reply }),
  'reply-cancelled': z.strictObject({ reply }),
  /** A line reads like this pad, which is not listened to from here on. */
  'reply-shadowed': z.strictObject({ reply }),
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
  /** All places pressed on one line, held against each other. */
  'press-compared': z.strictObject({
    line,
    outcome: z.enum(['one', 'tied', 'all', 'none']),
    parts: z.array(z.string()),
    shamPressed: z.boolean(),
  }),
  'press-ended': z.strictObject({ pin, reason: z.enum(['done', 'given-up']) }),
  /** An act that could not be carried out, with the reason in words. */
  'act-refused': z.strictObject({ act: z.enum(actNames), reason: z.string() }),
  'ground-touched': z.strictObject({
    value: z.number(),
    which: z.union([z.literal(1), z.literal(2)]),
  }),
  /** During the ground check something was touched that is not ground. */
  'ground-missed': z.strictObject({ value: z.number() }),
  /** Two opens in a row: the clip may be off. */
  'ground-doubted': z.strictObject({ opens: z.int().positive() }),
  'ground-checked': z.strictObject({ outcome: z.enum(['good', 'skipped']) }),
  'pin-reached': z.strictObject({ pin, line }),
  'question-asked': z.strictObject({
    question: z.enum(questions),
    pin,
    /** The place along the pin's line that is asked about, where it is not the pin itself. */
    place: place.optional(),
  }),
  'question-answered': z.strictObject({
    question: z.enum(questions),
    pin,
    by: z.enum(['act', 'ground-taps', 'contact', 'reading']),
  }),
  'walk-held': z.strictObject({ reason: z.enum(holdReasons), detail: z.string() }),
  'walk-freed': z.strictObject({ reason: z.enum(holdReasons) }),
  'walk-paused': z.strictObject({
    reason: z.enum(['asked', 'link-lost', 'meter-silent', 'file-blocked']),
  }),
  'walk-continued': z.strictObject({ pin }),
  /**
   * A touch settled, or an open was answered; which pin it belongs to may still be in doubt. A number given
   * before revises that touch: the reading went on moving under the probe.
   */
  'touch-captured': z.strictObject({
    touch: z.int().nonnegative(),
    value: z.number().optional(),
    overload: z.literal(true).optional(),
    /** The reading did not hold still. */
    wobble: z.literal(true).optional(),
    standardUncertainty: z.number().nonnegative().nullable(),
    /** Standard deviation from the touch itself: noise and unfinished creep, without the meter's accuracy. */
    deviation: z.number().nonnegative().optional(),
    /** Sum of squared residuals about the fitted creep, for learning the bench's noise. */
    residualSquares: z.number().nonnegative(),
    readings: z.int().nonnegative(),
    range: z.number().optional(),
    resolution: z.number(),
    /** The display stayed coarser than it could be, in the reading's unit. */
    coarseStep: z.number().positive().optional(),
    from: t,
    to: t,
  }),
  'pin-settled': z.strictObject({
    touch: z.int().nonnegative(),
    pin,
    line,
    ...settled,
  }),
  'pin-judged': z.strictObject({
    pin,
    line,
    verdict: z.enum(verdicts),
    /** Probability that the verdict's class is the true one, 0 to 1. */
    confidence: z.number().min(0).max(1),
    expected: expectedBounds,
    /** True when nothing more is waited for at this pin. */
    agreed: z.boolean(),
    advice: z.enum(nextActions).optional(),
    /** What had a part in the verdict beside the line's own reading and limits. */
    because: z.array(z.enum(reasons)).optional(),
    /** Told anew without a touch: what was read elsewhere puts the same reading in another light. */
    anew: z.literal(true).optional(),
  }),
  /** How this meter, or this board, reads lines of a class beside what is expected; null where no more is told. */
  'shift-estimated': z.strictObject({
    lines: z.enum(shiftClasses),
    shift: z
      .union([
        z.strictObject({ scale: z.number().positive(), ...toldShift }),
        z.strictObject({ offset: z.number(), ...toldShift }),
      ])
      .nullable(),
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
  'walk-realigned': z.strictObject({
    /** How many places along the walk moved. */
    shift: z.int(),
    pin,
    because: z.enum(['act', 'fits-better']),
  }),
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
  'control-compared': recheck.control,
  'recheck-compared': recheck.compared,
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
    ...settled,
    verdict: z.enum(verdicts),
    confidence: probability,
    expected: expectedBounds,
    advice: z.enum(nextActions).optional(),
  }),
  'probe-ended': z.strictObject({ reason: z.enum(['done', 'given-up']) }),
  'walk-finished': z.strictObject({
    tally: z.record(z.enum(verdicts), z.int().nonnegative()),
  }),
  ...jobBodies,
} as const;

type Bodies = { [K in keyof typeof bodies]: z.infer<(typeof bodies)[K]> };
type Plain<K extends keyof Bodies> = { readonly type: K; readonly t: number } & Readonly<Bodies[K]>;

/** A reading as an event: the reading itself, so that a session and a reading log share one shape. */
export type ReadingTaken = { readonly type: 'reading-taken' } & Reading;

export type WalkEvent = { [K in keyof Bodies]: Plain<K> }[keyof Bodies] | ReadingTaken;
export type EventType = WalkEvent['type'];
export type EventOf<K extends EventType> = Extract<WalkEvent, { type: K }>;

/** An event with its place in the session. */
export type Numbered<E extends WalkEvent = WalkEvent> = { readonly seq: number } & E;

export const eventBodies = bodies;

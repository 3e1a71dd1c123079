// Everything that can have happened, in the words of the session file. Names and fields are a public format:
// they are added to, never changed. `t` is the time of the reading or act that decided the event.
import { z } from 'zod';
import { reasons } from './context/reasons.js';
import { shiftClasses } from './context/shift-class.js';
import { shiftTold } from './context/shift-format.js';
import { actNames, linkChanges, probeSides } from './inputs.js';
import { jobBodies } from './job/job-events.js';
import { replyBodies } from './pads/reply-events.js';
import { pressBodies } from './press/press-events.js';
import type { Reading } from './reading.js';
import { readyBodies } from './ready/ready-events.js';
import { recheckBodies } from './recheck/recheck-events.js';
import { reworkBodies } from './rework/rework-events.js';
import { sessionBodies } from './session-events.js';
import { suspectBodies } from './suspects/suspect-events.js';
import { expectedBounds, nextActions, settledFields, verdicts } from './verdict.js';

export const questions = ['open', 'same-or-next', 'shifted', 'go-back'] as const;
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

const t = z.number();
const pin = z.string();
const line = z.string();
/** A pin of a donor board that is walked beside the patient: pin and line are called "donor 7" and "donor D0_P". */
const board = z.literal('donor').optional();
/** A place along a line; `part` is left out at the chip. */
const place = z.strictObject({ part: z.string().optional(), side: z.enum(probeSides) });

const bodies = {
  ...sessionBodies,
  ...replyBodies,
  ...pressBodies,
  ...readyBodies,
  ...suspectBodies,
  ...recheckBodies,
  ...reworkBodies,
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
  /** An act that could not be carried out, with the reason in words. */
  'act-refused': z.strictObject({ act: z.enum(actNames), reason: z.string() }),
  'ground-touched': z.strictObject({
    value: z.number(),
    which: z.union([z.literal(1), z.literal(2)]),
  }),
  /** What may be a slip on the first ground, or a hasty lift to the second: it is not counted. */
  'ground-repeated': z.strictObject({ value: z.number() }),
  /** During the ground check something was touched that is not ground. */
  'ground-missed': z.strictObject({ value: z.number() }),
  /** Two opens in a row: the clip may be off. */
  'ground-doubted': z.strictObject({ opens: z.int().positive() }),
  'ground-checked': z.strictObject({ outcome: z.enum(['good', 'skipped']) }),
  'pin-reached': z.strictObject({ pin, line, board }),
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
    board,
    ...settledFields,
  }),
  'pin-judged': z.strictObject({
    pin,
    line,
    board,
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
    shift: shiftTold,
  }),
  'walk-realigned': z.strictObject({
    /** How many places along the walk moved. */
    shift: z.int(),
    pin,
    because: z.enum(['act', 'fits-better']),
  }),
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

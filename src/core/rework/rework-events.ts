// What can be told of the work on the board after the walk: heat, what was done, what was tested, how the job ended.
import { z } from 'zod';

export const reworkActions = [
  'reflow',
  'resolder',
  'replace',
  'remove',
  'fit',
  'wire',
  'clean',
  'inspect',
  'other',
] as const;
export type ReworkAction = (typeof reworkActions)[number];

export const reworkTools = [
  'hot-air',
  'iron',
  'tweezers',
  'infrared',
  'preheater',
  'other',
] as const;
export type ReworkTool = (typeof reworkTools)[number];

/** What was seen to before heat, each confirmed by the technician. */
export const heatCautions = ['battery', 'cells', 'air', 'esd', 'sheets'] as const;
export type HeatCaution = (typeof heatCautions)[number];

export const drawJudgements = ['as-expected', 'too-high', 'too-low', 'not-known'] as const;
export const functionOutcomes = ['yes', 'partly', 'no'] as const;
export const jobOutcomes = ['repaired', 'partly-repaired', 'not-repaired', 'returned'] as const;
export type JobOutcome = (typeof jobOutcomes)[number];

const name = z.string().min(1).max(40);
const text = z.string().max(600);
const seconds = z.number().nonnegative();

/** A part of the profile, or an area by its name in the profile or by a name of the technician's own. */
const place = { part: name.optional(), area: name.optional() };

/** As shown by the station: the set-point in degrees Celsius, the airflow on the station's own scale. */
const setting = {
  tool: z.enum(reworkTools).optional(),
  setPoint: z.number().positive().optional(),
  airflow: z.number().nonnegative().optional(),
};

export const reworkBodies = {
  'heat-cautions-confirmed': z.strictObject({ cautions: z.array(z.enum(heatCautions)).min(1) }),
  'heat-started': z.strictObject({ ...place, ...setting }),
  /** A running heat time comes near its limit, or has passed it. */
  'heat-limit-met': z.strictObject({
    ...place,
    /** The area the limit is for; absent where it holds for every place. */
    of: name.optional(),
    /** One run of heat, or all heat there in this session. */
    limit: z.enum(['run', 'total']),
    stage: z.enum(['near', 'passed']),
    seconds,
    allowed: seconds,
  }),
  /** `lost`: the program ended while heat was on; the seconds are those that are known. */
  'heat-stopped': z.strictObject({ ...place, seconds, ended: z.enum(['act', 'lost']) }),
  'rework-logged': z.strictObject({
    action: z.enum(reworkActions),
    ...place,
    ...setting,
    /** Time under heat. */
    seconds: seconds.optional(),
    note: text.optional(),
  }),
  /** The draw on a current-limited bench supply, as read from it and judged by the technician; volt and ampere. */
  'power-checked': z.strictObject({
    volts: z.number().positive().optional(),
    amperes: z.number().nonnegative().optional(),
    limit: z.number().positive().optional(),
    draw: z.enum(drawJudgements),
    note: text.optional(),
  }),
  'function-tested': z.strictObject({
    tested: z.string().min(1).max(200),
    works: z.enum(functionOutcomes),
    note: text.optional(),
  }),
  'job-closed': z.strictObject({
    as: z.enum(jobOutcomes),
    /** Why it is closed so where the recheck does not bear it out, or for whoever reads it. */
    reason: text.optional(),
    /** The place that turned out to be at fault, as the profile names it. */
    cause: name.optional(),
    /** The recheck it rests on. */
    recheck: z.strictObject({ file: z.string(), begins: z.string() }).optional(),
  }),
} as const;

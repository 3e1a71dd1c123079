// The profile: a connector, its pins in walking order, the lines they carry, the parts along each line and
// what a good board reads. Strict: an unknown key is refused, so a typing slip never passes silently.
import { z } from 'zod';
import { measureFunctions, polarities } from '../reading.js';
import { heatLimits } from './heat-limits-format.js';

export const provenance = z.strictObject({
  by: z.string().min(1),
  date: z.iso.date(),
  how: z.string().min(1),
  source: z.string().optional(),
});

/** Of a pin, a line, a part, a group. */
export const name = z
  .string()
  .min(1)
  .max(40)
  .regex(/^[\w.+#/~-]+$/u, 'use letters, digits and . + # / ~ - _ only');

/** What a good board reads here. `tolerance` is a fraction of the nominal. */
const expectedValue = z.strictObject({
  nominal: z.number().positive(),
  tolerance: z.number().positive().max(1),
  /** When the value holds for one polarity or range only. */
  polarity: z.enum(polarities).optional(),
  range: z.number().positive().optional(),
  from: z.strictObject({ boards: z.int().positive(), how: z.string().min(1) }).optional(),
});
const expectation = z.union([z.literal('overload'), expectedValue]);

/** How often a place is at fault on boards that come in, as a fraction; for the order of suspects. */
const prior = z.number().positive().max(0.5);

/** One stop on the way from the pin to the chip, in order. */
const chainStop = z.union([
  z.strictObject({ joint: z.string().min(1), prior: prior.optional() }),
  z.strictObject({ part: name }),
  z.strictObject({ chip: z.string().min(1) }),
  /** A branch to ground or to a supply at this place: what it alone would read, if known. */
  z.strictObject({
    shunt: z.strictObject({ part: name, reads: z.number().positive().optional() }),
  }),
]);

const lineKinds = ['signal', 'supply', 'ground', 'unused'] as const;

const line = z.strictObject({
  kind: z.enum(lineKinds),
  title: z.string().optional(),
  group: name.optional(),
  mate: name.optional(),
  expect: z.partialRecord(z.enum(measureFunctions), expectation).optional(),
  /** In the unit of the function that the profile measures; another function goes by its usual limits. */
  limits: z
    .strictObject({
      /** At or under this the line counts as shorted. */
      short: z.number().nonnegative().optional(),
      /** At or over this the line counts as open even where the meter still shows a number. */
      open: z.number().positive().optional(),
    })
    .optional(),
  /** The line carries bulk capacitance: it charges for seconds before its value can be read. */
  charges: z.boolean().optional(),
  chain: z.array(chainStop).optional(),
  note: z.string().optional(),
});

const pin = z.strictObject({
  pin: name,
  line: name,
  row: z.int().positive().optional(),
});

const connector = z.strictObject({
  id: name,
  title: z.string().optional(),
  pinOne: z.string().optional(),
  viewed: z.enum(['plug', 'receptacle']).optional(),
  numbering: z.enum(['row-wise', 'odd-even', 'around']).optional(),
  endTabs: z.enum(['ground', 'isolated', 'none']).optional(),
  pins: z.array(pin).min(1).max(2000),
});

const part = z.strictObject({
  kind: z.enum([
    'filter',
    'resistor',
    'capacitor',
    'inductor',
    'diode',
    'fuse',
    'switch',
    'connector',
    'chip',
    'other',
  ]),
  title: z.string().optional(),
  lines: z.array(name),
  where: z.string().optional(),
  prior: prior.optional(),
});

/** What can be seen of a device from outside, as a question that yes or no answers. */
const observation = z.strictObject({
  asks: z.string().min(1).max(200),
  /** Why the answer matters, in a few words. */
  note: z.string().optional(),
});

const symptom = z.strictObject({
  id: name,
  says: z.string().min(1),
  walkFirst: z.array(name),
  leaveAlone: z.array(name).optional(),
  why: z.string().optional(),
  /** How often it comes in, beside the other symptoms; 1 where left out. */
  weight: z.number().positive().max(1000).optional(),
  /**
   * For an observation the share of boards with this symptom that answer it with yes. Never 0 or 1: one slip of
   * the eye rules nothing out. An observation that is left out tells nothing.
   */
  shows: z.record(name, z.number().min(0.01).max(0.99)).optional(),
});

export const profileFormat = z.strictObject({
  $schema: z.string().optional(),
  format: z.literal('pinwalk-profile/1'),
  id: name,
  title: z.string().min(1),
  /** Invented data, for training and tests. */
  demo: z.boolean().optional(),
  provenance,
  measure: z.strictObject({
    function: z.enum(measureFunctions),
    polarity: z.enum(polarities),
    /** A fixed range to ask the meter for: full scale, in the function's unit. */
    range: z.number().positive().optional(),
  }),
  connector,
  lines: z.record(name, line),
  parts: z.record(name, part).optional(),
  /** Parts that share heat, as those around and behind one another do. */
  areas: z
    .record(
      name,
      z.strictObject({
        title: z.string().min(1).optional(),
        parts: z.array(name).min(1),
        heat: heatLimits.optional(),
      }),
    )
    .optional(),
  /** For every place without limits of its own. */
  heat: heatLimits.optional(),
  groups: z.record(name, z.strictObject({ title: z.string().min(1) })).optional(),
  /** Asked in this order at intake. */
  observations: z.record(name, observation).optional(),
  symptoms: z.array(symptom).optional(),
  cautions: z.array(z.string().min(1)).optional(),
});

export type Profile = z.infer<typeof profileFormat>;
export type ProfileLine = Profile['lines'][string];
export type Expectation = z.infer<typeof expectation>;
export type Symptom = z.infer<typeof symptom>;
export type ChainStop = z.infer<typeof chainStop>;

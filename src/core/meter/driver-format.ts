// The driver: how to talk to one kind of meter and how to read what it says, as data. Strict: an unknown
// key is refused. A new meter needs a JSON file, never code.
import { z } from 'zod';
import { provenance } from '../profile/profile-format.js';
import { measureFunctions, readingFlags } from '../reading.js';
import { wireEncodings } from './wire-text.js';

const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/u, 'use lower-case words joined by -');
const seconds = z.number().positive().max(60);
const command = z.string().min(1).max(200);
const measure = z.enum(measureFunctions);

const wire = z.strictObject({
  encoding: z.enum(wireEncodings),
  /** Longest line the meter may send, in bytes without the line end; anything longer is a fault. */
  maxFrame: z.int().min(8).max(4096),
  /** What ends a line we send. */
  sendEnd: z.enum(['\n', '\r', '\r\n', '']),
  serial: z.strictObject({
    baud: z.int().positive(),
    dataBits: z.union([z.literal(5), z.literal(6), z.literal(7), z.literal(8)]),
    parity: z.enum(['none', 'even', 'odd', 'mark', 'space']),
    stopBits: z.union([z.literal(1), z.literal(1.5), z.literal(2)]),
    /** Some opto-isolated leads are powered from these lines. */
    dtr: z.boolean().optional(),
    rts: z.boolean().optional(),
  }),
  tcpPort: z.int().min(1).max(65535).optional(),
});

const overload = z.strictObject({
  /** A magnitude at or over this is an overload, whatever the exact figure. */
  atLeast: z.number().positive().optional(),
  /** A magnitude at or over this is the meter's figure for a failed measurement: a fault. */
  faultAtLeast: z.number().positive().optional(),
  /** True where 9.91E37 means that nothing was measured; many meters send it for an overload. */
  notANumberIsBlank: z.boolean().optional(),
  /** Texts in place of the number, compared without the blanks around them. */
  texts: z.array(z.string().min(1)).optional(),
});

/** How numbers are written where they depart from plain IEEE 488.2 forms. */
const numbers = z.strictObject({
  /** Blanks may stand between the sign and the digits. */
  blanksAfterSign: z.boolean().optional(),
  decimalMark: z.enum(['.', ',']).optional(),
});

const keepAwake = z.strictObject({ send: command, everyS: seconds });

/** Request and response in the manner of IEEE 488.2 and SCPI-1999. */
const scpiTalk = z.strictObject({
  style: z.literal('scpi'),
  identify: command.optional(),
  /** Linear-time (RE2) expression over the whole identity: this driver is proposed where it matches. */
  recognise: z.string().min(1).max(400).optional(),
  init: z.array(command),
  functions: z.partialRecord(
    measure,
    z.strictObject({
      select: z.array(command),
      /** `{range}` stands for the full scale asked for; only the listed values are offered. */
      range: z
        .strictObject({ command, fullScales: z.array(z.number().positive()).min(1) })
        .optional(),
      /** Sent in order for each reading; the answer to the last one is the reading. */
      read: z.array(command).min(1),
    }),
  ),
  pollS: z.number().nonnegative().max(60),
  timeoutS: seconds,
  errorQueue: command.optional(),
  keepAwake: keepAwake.optional(),
  overload,
  numbers: numbers.optional(),
});

/** One character asks for one line. */
const keyTalk = z.strictObject({
  style: z.literal('key'),
  key: z.string().length(1),
  pollS: z.number().nonnegative().max(60),
  timeoutS: seconds,
  keepAwake: keepAwake.optional(),
});

/** The meter talks by itself. */
const streamTalk = z.strictObject({
  style: z.literal('stream'),
  silentAfterS: seconds,
  keepAwake: keepAwake.optional(),
});

/**
 * How a line of a streaming or key-asked meter reads. `pattern` is a linear-time (RE2) expression that must
 * match the whole line; its named groups are `value`, `unit`, `function`, `range` and `flags`.
 * Their texts are compared without the blanks around them.
 */
const line = z.strictObject({
  pattern: z.string().min(1).max(400),
  /** Function when neither unit nor function group tells it. */
  function: measure.optional(),
  functions: z.record(z.string(), measure).optional(),
  units: z
    .record(
      z.string(),
      /** What the unit may stand for: the function asked for if it is among them, else the first. */
      z.strictObject({ factor: z.number().positive(), functions: z.array(measure).min(1) }),
    )
    .optional(),
  overload,
  numbers: numbers.optional(),
  /** Values that stand for an empty display; `""` lets a line of blanks pass as one. */
  blanks: z.array(z.string()).optional(),
  /** Each key is searched for in the `flags` group. */
  flags: z.record(z.string().min(1), z.enum(readingFlags)).optional(),
  /**
   * Range codes: full scale and resolution in the function's SI unit. A code may belong to one function
   * only. `factor` multiplies the value, for meters that send display counts and a code.
   */
  ranges: z
    .record(
      z.string(),
      z.strictObject({
        fullScale: z.number().positive(),
        resolution: z.number().positive(),
        function: measure.optional(),
        factor: z.number().positive().optional(),
      }),
    )
    .optional(),
});

/** How the virtual bench writes a reading as this meter would. It must decode back to itself. */
const speak = z.strictObject({
  /** `{value}`, `{unit}`, `{function}`, `{range}` and `{flags}` stand for the fields. */
  line: z.string().min(1).max(200),
  number: z.strictObject({
    /** `decimal`: in the unit, `1.234`; `exponent`: NR3, `+1.234E+03`; `counts`: display counts. */
    notation: z.enum(['decimal', 'exponent', 'counts']),
    /** What stands for a plus: `+`, nothing, or a blank. */
    plus: z.enum(['+', '', ' ']),
    /** Digits after the point of an `exponent`. */
    digits: z.int().min(1).max(12).optional(),
    /** Characters of the field, filled up to this. */
    width: z.int().min(1).max(40).optional(),
    fill: z.enum(['blanks-first', 'blanks-after-sign', 'zeros']).optional(),
  }),
  overload: z.string().min(1),
  blank: z.string(),
  /** Stands where a flag is not set, once for each character of its code. */
  noFlag: z.string().max(1).optional(),
});

/** ±(percent of reading + counts), for one function on one range. */
const accuracy = z.strictObject({
  function: measure,
  /** Full scale, in the function's SI unit. */
  fullScale: z.number().positive(),
  resolution: z.number().positive(),
  percent: z.number().nonnegative(),
  counts: z.number().nonnegative(),
});

export const driverFormat = z.strictObject({
  $schema: z.string().optional(),
  format: z.literal('pinwalk-driver/1'),
  id,
  title: z.string().min(1),
  provenance,
  /** True where the figures are typical of the kind and not of one instrument. */
  generic: z.boolean(),
  wire,
  talk: z.discriminatedUnion('style', [scpiTalk, keyTalk, streamTalk]),
  line: line.optional(),
  speak: speak.optional(),
  /** Full scale of the display in counts, such as 6000. */
  displayCounts: z.int().positive(),
  readingsPerS: z.number().positive(),
  accuracy: z.array(accuracy).min(1),
});

export type Driver = z.infer<typeof driverFormat>;
export type ScpiTalk = z.infer<typeof scpiTalk>;
export type LineGrammar = z.infer<typeof line>;
export type AccuracyRow = z.infer<typeof accuracy>;
export type NumberForms = z.infer<typeof numbers>;
export type OverloadForms = z.infer<typeof overload>;
export type Speak = z.infer<typeof speak>;

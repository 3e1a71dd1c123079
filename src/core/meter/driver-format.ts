// The driver: how to talk to one kind of meter and how to read what it says, as data. Strict: an unknown
// key is refused. A new meter needs a JSON file, never code. Each description also reaches the generated JSON
// Schema, where an editor shows it.
import { z } from 'zod';
import { provenance } from '../profile/profile-format.js';
import { measureFunctions, readingFlags } from '../reading.js';
import { wireEncodings } from './wire-text.js';

const id = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/u, 'use lower-case words joined by -')
  .describe('Lower-case words joined by -; the file has the same name.');
const seconds = z.number().positive().max(60);
const command = z.string().min(1).max(200);
const measure = z.enum(measureFunctions);
const positive = z.number().positive();

const serial = z.strictObject({
  baud: z.int().positive(),
  dataBits: z.union([z.literal(5), z.literal(6), z.literal(7), z.literal(8)]),
  parity: z.enum(['none', 'even', 'odd', 'mark', 'space']),
  stopBits: z.union([z.literal(1), z.literal(1.5), z.literal(2)]),
  dtr: z.boolean().optional().describe('Some opto-isolated leads are powered from this line.'),
  rts: z.boolean().optional().describe('Some opto-isolated leads are powered from this line.'),
});

const wire = z.strictObject({
  encoding: z.enum(wireEncodings),
  maxFrame: z
    .int()
    .min(8)
    .max(4096)
    .describe(
      'Longest line the meter may send, in bytes without its end; a longer one is a fault.',
    ),
  sendEnd: z.enum(['\n', '\r', '\r\n', '']).describe('What ends a line we send.'),
  serial,
  tcpPort: z.int().min(1).max(65535).optional(),
});

const overload = z.strictObject({
  atLeast: positive
    .optional()
    .describe('A magnitude at or over this, as sent, is an overload, whatever the exact figure.'),
  faultAtLeast: positive
    .optional()
    .describe("A magnitude at or over this is the meter's figure for a failed measurement."),
  notANumberIsBlank: z
    .boolean()
    .optional()
    .describe('9.91E37 means nothing was measured; without this it is an overload.'),
  texts: z
    .array(z.string().min(1))
    .optional()
    .describe('Texts in place of the number, compared without the blanks around them.'),
});

const numbers = z
  .strictObject({
    blanksAfterSign: z
      .boolean()
      .optional()
      .describe('Blanks may stand between the sign and the digits.'),
    decimalMark: z.enum(['.', ',']).optional(),
  })
  .describe('Where numbers depart from plain IEEE 488.2 forms.');

const keepAwake = z
  .strictObject({ send: command, everyS: seconds })
  .describe('Sent so that the meter does not switch itself off. Nothing it answers is awaited.');

const scpiFunction = z.strictObject({
  select: z.array(command),
  range: z
    .strictObject({
      command: command.describe('{range} stands for the full scale asked for.'),
      fullScales: z.array(positive).min(1).describe('In ohm or volt; only these are offered.'),
    })
    .optional(),
  read: z
    .array(command)
    .min(1)
    .describe('Sent in order for each reading; the answer to the last one is the reading.'),
});

const functionQuery = z
  .strictObject({
    send: command,
    everyS: seconds.describe('Asked this often, and before the reading after one that jumped.'),
    answers: z
      .record(z.string().min(1).max(40), measure)
      .describe(
        'The function that each first word of an answer stands for, without quotes; the case does not matter.',
      ),
  })
  .describe('For readings that do not name their function: it may be switched at the panel.');

const scpiTalk = z
  .strictObject({
    style: z.literal('scpi'),
    identify: command.optional(),
    recognise: z
      .string()
      .min(1)
      .max(400)
      .optional()
      .describe(
        'RE2 expression over the whole identity: this driver is proposed where it matches.',
      ),
    init: z.array(command),
    functions: z.partialRecord(measure, scpiFunction),
    functionQuery: functionQuery.optional(),
    pollS: z.number().nonnegative().max(60),
    timeoutS: seconds,
    errorQueue: command.optional(),
    keepAwake: keepAwake.optional(),
    overload,
    numbers: numbers.optional(),
  })
  .describe('Request and response in the manner of IEEE 488.2 and SCPI-1999.');

const keyTalk = z
  .strictObject({
    style: z.literal('key'),
    key: z.string().length(1),
    pollS: z.number().nonnegative().max(60),
    timeoutS: seconds,
    keepAwake: keepAwake.optional(),
  })
  .describe('One character asks for one line.');

const streamTalk = z
  .strictObject({
    style: z.literal('stream'),
    silentAfterS: seconds,
    keepAwake: keepAwake.optional(),
  })
  .describe('The meter talks by itself.');

const unit = z.strictObject({
  factor: positive.describe('How many ohm or volt one of this unit is.'),
  functions: z
    .array(measure)
    .min(1)
    .describe('What it may stand for: the function asked for if it is among them, else the first.'),
});

const range = z.strictObject({
  fullScale: positive.describe('In ohm or volt.'),
  resolution: positive.describe('One step of the last digit, in ohm or volt.'),
  function: measure.optional().describe('Where the code belongs to one function only.'),
  factor: positive
    .optional()
    .describe('Multiplies the value, for meters that send display counts.'),
});

const line = z
  .strictObject({
    pattern: z
      .string()
      .min(1)
      .max(400)
      .describe(
        'Linear-time (RE2) expression that must match the whole line. Its named groups are value, unit, function, range and flags; their texts are compared without the blanks around them.',
      ),
    function: measure.optional().describe('The function where the line does not tell it.'),
    functions: z.record(z.string(), measure).optional().describe('Codes of the function group.'),
    units: z.record(z.string(), unit).optional().describe('Texts of the unit group.'),
    overload,
    numbers: numbers.optional(),
    blanks: z
      .array(z.string())
      .optional()
      .describe('Values that stand for an empty display; "" lets a line of blanks pass as one.'),
    flags: z
      .record(z.string().min(1), z.enum(readingFlags))
      .optional()
      .describe('Each key is searched for in the flags group, the longest first.'),
    ranges: z.record(z.string(), range).optional().describe('Codes of the range group.'),
  })
  .describe('How a line of the meter reads.');

const speak = z
  .strictObject({
    line: z
      .string()
      .min(1)
      .max(200)
      .describe('{value}, {unit}, {function}, {range} and {flags} stand for the fields.'),
    number: z.strictObject({
      notation: z
        .enum(['decimal', 'exponent', 'counts'])
        .describe('1.234 in the unit, +1.234E+03, or the display counts.'),
      plus: z.enum(['+', '', ' ']).describe('What stands for a plus.'),
      digits: z.int().min(1).max(12).optional().describe('After the point of an exponent form.'),
      width: z.int().min(1).max(40).optional().describe('Characters the number is filled up to.'),
      fill: z.enum(['blanks-first', 'blanks-after-sign', 'zeros']).optional(),
    }),
    overload: z.string().min(1),
    blank: z.string(),
    noFlag: z
      .string()
      .max(1)
      .optional()
      .describe('Stands where a flag is not set, once for each character of its code.'),
  })
  .describe('How the virtual bench writes a reading as this meter would; it must read back.');

const accuracy = z
  .strictObject({
    function: measure,
    fullScale: positive.describe('In ohm or volt.'),
    resolution: positive.describe('One step of the last digit, in ohm or volt.'),
    percent: z.number().nonnegative().describe('Of the reading.'),
    counts: z.number().nonnegative().describe('Steps of the last digit.'),
  })
  .describe('±(percent of reading + counts), for one function on one range.');

export const driverFormat = z.strictObject({
  $schema: z.string().optional(),
  format: z.literal('pinwalk-driver/1'),
  id,
  title: z.string().min(1),
  provenance,
  generic: z
    .boolean()
    .describe('True where the figures are typical of the kind and not of one instrument.'),
  wire,
  talk: z.discriminatedUnion('style', [scpiTalk, keyTalk, streamTalk]),
  line: line.optional(),
  speak: speak.optional(),
  displayCounts: z.int().positive().describe('Full scale of the display, such as 6000.'),
  readingsPerS: positive,
  accuracy: z.array(accuracy).min(1),
});

export type Driver = z.infer<typeof driverFormat>;
export type ScpiTalk = z.infer<typeof scpiTalk>;
export type LineGrammar = z.infer<typeof line>;
export type AccuracyRow = z.infer<typeof accuracy>;
export type NumberForms = z.infer<typeof numbers>;
export type OverloadForms = z.infer<typeof overload>;
export type Speak = z.infer<typeof speak>;

// Reads the lines of meters that stream or answer to a key, by the driver's line grammar. Only a line that
// matches whole, with every code known, becomes a reading.
import type { MeasureFunction, Reading } from '../reading.js';
import { accuracyFor, rangesOf } from './accuracy.js';
import type { Asked, MeterDecoder } from './driver-decoder.js';
import type { Driver, LineGrammar } from './driver-format.js';
import { faultOf } from './fault.js';
import { fieldReader, type LineFields } from './line-fields.js';
import { compilePattern } from './line-pattern.js';
import { kindOfMagnitude } from './magnitude.js';
import {
  digitStep,
  numberValue,
  plainNumber,
  readNumber,
  type WrittenNumber,
} from './number-forms.js';
import { plausibilityOf } from './plausible.js';

type Scale = { readonly range?: number; readonly resolution?: number };

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-6 * Math.abs(b);

/** The place of the point tells the range of a display meter, where exactly one range has that resolution. */
const rangeByResolution = (driver: Driver, measure: MeasureFunction, resolution: number): Scale => {
  const rows = rangesOf(driver, measure).filter((row) => near(row.resolution, resolution));
  return rows.length === 1 && rows[0] ? { range: rows[0].fullScale, resolution } : { resolution };
};

const trimmedSet = (texts: readonly string[] | undefined): ReadonlySet<string> =>
  new Set(texts?.map((text) => text.trim()));

export const lineDecoder = (driver: Driver, grammar: LineGrammar): MeterDecoder => {
  const pattern = compilePattern(grammar.pattern);
  const fieldsOf = fieldReader(grammar);
  const overloads = trimmedSet(grammar.overload.texts);
  const blanks = trimmedSet(grammar.blanks);
  const plausible = plausibilityOf(driver);
  const unitIsSent = pattern.groupNames.includes('unit');

  const scaleOf = (fields: LineFields, number: WrittenNumber, value: number): Scale => {
    if (fields.range) {
      return { range: fields.range.fullScale, resolution: fields.range.resolution };
    }
    // Digits after an exponent form's point are padding as often as not.
    if (number.form === 'NR3') {
      return { resolution: accuracyFor(driver, fields.function, undefined, value).resolution };
    }
    const step = digitStep(number, fields.unit?.factor ?? 1);
    return rangeByResolution(driver, fields.function, step);
  };

  const decode = (t: number, frame: string, asked: Asked): Reading => {
    if (frame.trim() === '' && blanks.has('')) {
      return { t, function: asked.function, blank: true };
    }
    const group = pattern.match(frame);
    if (!group) return faultOf(t, 'not understood', frame);
    const fields = fieldsOf(group, asked.function);
    if (typeof fields === 'string') return faultOf(t, fields, frame);

    const { function: measure, unit, range, flags } = fields;
    const context = { t, function: measure, ...(flags.length > 0 ? { flags } : {}) };
    const ranged = { ...context, ...(range ? { range: range.fullScale } : {}) };
    const text = group('value');
    if (overloads.has(text)) return { ...ranged, overload: true };
    if (blanks.has(text)) return { ...ranged, blank: true };

    const number = readNumber(plainNumber(text, grammar.numbers));
    if (!number) return faultOf(t, 'not a number', frame);
    if (unitIsSent && !unit) return faultOf(t, 'unit missing', frame);
    switch (kindOfMagnitude(Math.abs(numberValue(number)), grammar.overload)) {
      case 'overload':
        return { ...ranged, overload: true };
      case 'failed':
        return faultOf(t, 'failed measurement', frame);
      case 'blank':
        return { ...ranged, blank: true };
      case 'value': {
        const value = numberValue(number, unit?.factor ?? 1, range?.factor ?? 1);
        if (!plausible(measure, value)) return faultOf(t, 'beyond any range', frame);
        return { ...context, ...scaleOf(fields, number, value), value };
      }
    }
  };
  return { decode };
};

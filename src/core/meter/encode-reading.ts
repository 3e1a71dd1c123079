// Writes a reading as a driver's meter would send it, so that the virtual bench can imitate any meter that has
// a driver. What it writes, the driver's own decoder reads back.
import type { BlankReading, MeasureFunction, OverloadReading, ValueReading } from '../reading.js';
import type { Driver, LineGrammar, Speak } from './driver-format.js';
import { numberText } from './number-text.js';

/** What the imitated display is set to, both in the function's SI unit. */
export interface Display {
  readonly fullScale: number;
  readonly resolution: number;
}

export type Sayable = (ValueReading | OverloadReading | BlankReading) & {
  readonly function: MeasureFunction;
};

/** How SCPI instruments answer unless their driver says otherwise. They have no blank: not-a-number is nearest. */
const scpiSpeak: Speak = {
  line: '{value}',
  number: { notation: 'exponent', plus: '+', digits: 8 },
  overload: '+9.90000000E+37',
  blank: '+9.91000000E+37',
};

/** The largest unit the display's full scale reaches, as display meters choose it; first named wins. */
const unitFor = (
  grammar: LineGrammar | undefined,
  measure: MeasureFunction,
  { fullScale }: Display,
): { text: string; factor: number } => {
  const fitting = Object.entries(grammar?.units ?? {})
    .filter(([, unit]) => unit.functions.includes(measure))
    .map(([text, { factor }]) => ({ text, factor }))
    .sort((a, b) => b.factor - a.factor);
  return (
    fitting.find(({ factor }) => factor <= fullScale) ?? fitting.at(-1) ?? { text: '', factor: 1 }
  );
};

const rangeCode = (
  grammar: LineGrammar | undefined,
  measure: MeasureFunction,
  { fullScale, resolution }: Display,
): string => {
  if (!grammar?.ranges) return '';
  const found = Object.entries(grammar.ranges).find(
    ([, range]) =>
      (range.function ?? measure) === measure &&
      range.fullScale === fullScale &&
      range.resolution === resolution,
  );
  if (!found) {
    throw new RangeError(`no range code for ${measure} at ${fullScale} in steps of ${resolution}`);
  }
  return found[0];
};

/** One code for each flag, though several may mean it; the others read as not set. */
const flagsText = (grammar: LineGrammar | undefined, reading: Sayable, noFlag: string): string => {
  const unsaid = new Set(reading.flags);
  return Object.entries(grammar?.flags ?? {})
    .map(([code, flag]) => (unsaid.delete(flag) ? code : noFlag.repeat(code.length)))
    .join('');
};

const speakOf = (driver: Driver): Speak => {
  if (driver.speak) return driver.speak;
  if (driver.talk.style === 'scpi') return scpiSpeak;
  throw new TypeError(`driver ${driver.id} does not say how its meter speaks`);
};

const functionCode = (grammar: LineGrammar | undefined, measure: MeasureFunction): string =>
  Object.entries(grammar?.functions ?? {}).find(([, named]) => named === measure)?.[0] ?? '';

const fields = /\{(value|unit|function|range|flags)\}/gu;

/**
 * The line, without its end. A value is rounded to the display's resolution.
 * @throws TypeError when the driver neither speaks SCPI nor says how its meter speaks.
 * @throws RangeError when the driver has range codes and none for this display.
 */
export const encodeReading = (driver: Driver, reading: Sayable, display: Display): string => {
  const { line: grammar } = driver;
  const speak = speakOf(driver);
  const unit = unitFor(grammar, reading.function, display);
  const range = rangeCode(grammar, reading.function, display);
  const forms =
    grammar?.numbers ?? (driver.talk.style === 'scpi' ? driver.talk.numbers : undefined);

  const valueText = (): string => {
    if ('overload' in reading) return speak.overload;
    if ('blank' in reading) return speak.blank;
    const steps = reading.value / display.resolution;
    return numberText(steps, display.resolution / unit.factor, speak.number, forms?.decimalMark);
  };
  const texts: Readonly<Record<string, () => string>> = {
    value: valueText,
    unit: () => unit.text,
    function: () => functionCode(grammar, reading.function),
    range: () => range,
    flags: () => flagsText(grammar, reading, speak.noFlag ?? ''),
  };
  return speak.line.replace(fields, (_, field: string) => texts[field]?.() ?? '');
};

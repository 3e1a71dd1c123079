// The simulated meter: integrates what the probe reads over each conversion, finds its range, adds its own
// error and noise, rounds to its display and shows overload. Time is passed in. What it shows is a reading,
// never text.
import type { Driver } from '../core/meter/driver-format.js';
import type { Display, Sayable } from '../core/meter/encode-reading.js';
import type { MeasureFunction, ReadingFlag } from '../core/reading.js';
import { createAutorange, type Ranging } from './autorange.js';
import { displayRanges, fixedRange } from './display.js';
import type { Seeded } from './seeded.js';

/** How far this meter is from the one the expected values were taken with, and how it scatters. */
export interface MeterError {
  /** Factor on resistance. */
  readonly scale: number;
  /** Volts added in diode test. */
  readonly diodeOffsetV: number;
  /** Standard deviation of one reading as a fraction of it; 0.0002 to 0.004 are usual. */
  readonly noise: number;
  /** Standard deviation in steps of the last digit. */
  readonly noiseCounts: number;
  /** Resistance of leads and tips, ohm. */
  readonly leadOhms: number;
}

export const usualError: MeterError = {
  scale: 1,
  diodeOffsetV: 0,
  noise: 0.0005,
  noiseCounts: 0.3,
  leadOhms: 0.15,
};

export interface MeterSetup {
  readonly driver: Driver;
  readonly random: Seeded;
  readonly error: MeterError;
  readonly ranging: Ranging;
}

/** What the probe read during one conversion, evenly spaced; null where no path was. */
export type Samples = readonly (number | null)[];

export interface Shown {
  readonly reading: Sayable;
  readonly display: Display;
}

/** Buttons that change what the display tells; `frozen` repeats without a sign of it. */
export type Button = ReadingFlag | 'frozen';

export interface Meter {
  /** The reading at the end of a conversion. `range` is a fixed full scale, or null under autorange. */
  convert(samples: Samples, endS: number, measure: MeasureFunction, range: number | null): Shown;
  press(button: Button | null): void;
}

/** An open input drives the converter this far over its full scale. */
const openOverFullScale = 1.25;

export const createMeter = ({ driver, random, error, ranging }: MeterSetup): Meter => {
  const autorange = createAutorange(ranging, random);
  let measuring: MeasureFunction | null = null;
  let button: Button | null = null;
  let kept: Shown | null = null;

  const withError = (value: number, measure: MeasureFunction): number => {
    if (measure === 'diode') return value + error.diodeOffsetV;
    return measure === 'dc-volts' ? value : value * error.scale + error.leadOhms;
  };

  const present: Meter['convert'] = (samples, endS, measure, range) => {
    const ranges = displayRanges(driver, measure);
    if (measure !== measuring) autorange.restart();
    measuring = measure;
    const touched = samples.flatMap((value) => (value === null ? [] : [withError(value, measure)]));
    const magnitude = touched.length === 0 ? null : Math.abs(mean(touched));
    const place =
      range === null ? autorange.follow(magnitude, ranges, endS) : fixedRange(ranges, range);
    const display = ranges[place ?? ranges.length - 1] ?? ranges[0];
    const { fullScale, resolution } = display;
    const context = { t: endS, function: measure, range: fullScale, resolution };
    if (place === null && ranging.shows === 'blank')
      return { display, reading: { ...context, blank: true } };

    const top = openOverFullScale * fullScale;
    const inTheAir = samples.length - touched.length;
    const seen = touched.map((value) => Math.min(top, value));
    const integrated = mean([...seen, ...Array<number>(inTheAir).fill(top)]);
    if (place === null || Math.abs(integrated) > fullScale)
      return { display, reading: { ...context, overload: true } };
    const scatter =
      random.normal() * error.noise * Math.abs(integrated) +
      random.normal() * error.noiseCounts * resolution;
    const steps = Math.round((integrated + scatter) / resolution);
    return { display, reading: { ...context, value: tidy(steps * resolution) } };
  };

  return {
    press: (pressed) => {
      button = pressed;
    },
    convert: (samples, endS, measure, range) => {
      const fresh = present(samples, endS, measure, range);
      const repeats = button === 'hold' || button === 'minmax' || button === 'frozen';
      const shown: Shown = repeats && kept !== null ? kept : fresh;
      kept = shown;
      const reading = { ...shown.reading, t: endS };
      return {
        display: shown.display,
        reading: button === null || button === 'frozen' ? reading : { ...reading, flags: [button] },
      };
    },
  };
};

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Twelve digits: drops the binary remainder of `steps * resolution`. */
const tidy = (value: number): number => Number(value.toPrecision(12));

import { describe, expect, it } from 'vitest';
import { usualRanging } from '../../src/bench/autorange.js';
import { displayRanges, withCounts } from '../../src/bench/display.js';
import { createMeter, type MeterError, type Shown, usualError } from '../../src/bench/meter.js';
import { seeded } from '../../src/bench/seeded.js';
import type { Driver } from '../../src/core/meter/driver-format.js';
import { driverIds, shippedDriver } from '../support/driver-files.js';

const driver = shippedDriver('stream-value-unit');
const exact: MeterError = { ...usualError, noise: 0, noiseCounts: 0, leadOhms: 0 };

const meterOf = (error: Partial<MeterError> = {}, of: Driver = driver, ranging = usualRanging) =>
  createMeter({ driver: of, random: seeded(1, 'meter'), error: { ...exact, ...error }, ranging });

/** Ends conversions every 0.1 s until the meter shows a number. */
const untilShown = (read: (endS: number) => Shown): { shown: Shown; afterS: number } => {
  for (let n = 1; n <= 100; n += 1) {
    const shown = read(n / 10);
    if ('value' in shown.reading) return { shown, afterS: n / 10 };
  }
  throw new Error('the meter never showed a number');
};

describe('the simulated meter', () => {
  it('should show the mean of what it integrated, to the step of its display', () => {
    const meter = meterOf();
    const { reading } = meter.convert([388.12, 388.16], 0.1, 'resistance', 600);
    expect(reading).toEqual({
      t: 0.1,
      function: 'resistance',
      range: 600,
      resolution: 0.1,
      value: 388.1,
    });
  });

  it('should show overload in the air and over a fixed range', () => {
    const meter = meterOf();
    expect(meter.convert([null, null], 0.1, 'resistance', 600).reading).toHaveProperty('overload');
    expect(meter.convert([700, 700], 0.2, 'resistance', 600).reading).toHaveProperty('overload');
    expect(meter.convert([700, 700], 0.3, 'resistance', 6000).reading).toHaveProperty('value', 700);
  });

  it('should show neither line nor air when contact fills part of a conversion', () => {
    const meter = meterOf();
    const { reading } = meter.convert([100, 100, 100, null], 0.1, 'resistance', 600);
    // Three quarters at 100 ohm, one at an input a quarter over the 600 ohm full scale.
    expect(reading).toHaveProperty('value', (3 * 100 + 750) / 4);
  });

  it('should be off by its scale in resistance and by its offset in diode test', () => {
    const meter = meterOf({ scale: 1.06, diodeOffsetV: 0.02, leadOhms: 0.5 });
    const ohms = meter.convert([100], 0.1, 'resistance', 600).reading;
    const volts = meter.convert([0.47], 0.2, 'diode', null).reading;
    expect(ohms).toHaveProperty('value', 106.5);
    expect(volts).toHaveProperty('value', 0.49);
  });

  it('should scatter by its noise', () => {
    const meter = meterOf({ noise: 0.002, noiseCounts: 0 });
    const n = 2000;
    const values = Array.from({ length: n }, (_, i) => {
      const { reading } = meter.convert([400], i / 10, 'resistance', 600);
      return 'value' in reading ? reading.value : Number.NaN;
    });
    const mean = values.reduce((sum, v) => sum + v, 0) / n;
    const deviation = Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / n);
    // Five standard errors of a standard deviation; rounding to 0.1 adds 0.03 in square.
    expect(Math.abs(deviation - 0.8)).toBeLessThan(5 * (0.8 / Math.sqrt(2 * n)) + 0.001);
  });

  it('should look for its range from the air, showing overload meanwhile', () => {
    const meter = meterOf();
    const { shown, afterS } = untilShown((endS) => meter.convert([388], endS, 'resistance', null));
    expect(shown.display.fullScale).toBe(600);
    expect(afterS).toBeGreaterThan(usualRanging.fromHighestS[0]);
    expect(afterS).toBeLessThanOrEqual(0.1 + usualRanging.fromHighestS[1] + 0.1);
  });

  it('should take one to three seconds where ranging is slow, and show blanks where it does', () => {
    const meter = meterOf({}, driver, { shows: 'blank', fromHighestS: [1, 3], stepS: 0.5 });
    const first = meter.convert([388], 0.1, 'resistance', null);
    const { afterS } = untilShown((endS) => meter.convert([388], 0.1 + endS, 'resistance', null));
    expect(first.reading).toHaveProperty('blank', true);
    expect(afterS).toBeGreaterThanOrEqual(1);
    expect(afterS).toBeLessThanOrEqual(3.2);
  });

  it('should keep its range near the upper end and leave it beyond', () => {
    const meter = meterOf();
    untilShown((endS) => meter.convert([300], endS, 'resistance', null));
    expect(meter.convert([590], 11, 'resistance', null).display.fullScale).toBe(600);
    const { shown } = untilShown((endS) => meter.convert([610], 11 + endS, 'resistance', null));
    expect(shown.display.fullScale).toBe(6000);
    expect(meter.convert([590], 22, 'resistance', null).display.fullScale).toBe(6000);
  });

  it('should repeat one number while held, with the flag or without', () => {
    const meter = meterOf({ noise: 0.01 });
    const read = (endS: number) => meter.convert([400 + endS], endS, 'resistance', 600).reading;
    const before = read(1);
    meter.press('hold');
    expect(read(2)).toEqual({ ...before, t: 2, flags: ['hold'] });
    meter.press('frozen');
    expect(read(3)).toEqual({ ...before, t: 3 });
    meter.press(null);
    expect(read(4)).not.toHaveProperty('value', 'value' in before ? before.value : null);
  });
});

describe('the display', () => {
  it.each([
    [4000, 400, 0.1],
    [6000, 600, 0.1],
    [22_000, 220, 0.01],
    [60_000, 600, 0.01],
  ])('should give a %i-count meter a lowest range of %d in steps of %d', (counts, full, step) => {
    const [lowest] = displayRanges(withCounts(driver, counts), 'resistance');
    expect(lowest).toMatchObject({ fullScale: full, resolution: step });
    expect(lowest.fullScale / lowest.resolution).toBeCloseTo(counts, 6);
  });

  it.each([3999, 60_001, 5000.5])('should refuse %d counts', (counts) => {
    expect(() => withCounts(driver, counts)).toThrow('4000 to 60000');
  });

  it('should refuse other counts for a meter that sends range codes', () => {
    const coded = shippedDriver('stream-range-code');
    expect(() => withCounts(coded, 6000)).toThrow('range codes');
    expect(withCounts(coded, coded.displayCounts)).toBe(coded);
  });

  it.each(driverIds)('should have ranges for resistance and diode test in %s', (id) => {
    for (const measure of ['resistance', 'diode'] as const) {
      const scales = displayRanges(shippedDriver(id), measure).map((range) => range.fullScale);
      expect(scales).toEqual([...scales].sort((a, b) => a - b));
    }
  });
});

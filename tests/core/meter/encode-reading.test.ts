// What the virtual bench says in a driver's name must read back as what was meant, for every shipped driver.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileDriver } from '../../../src/core/meter/compile-driver.js';
import { encodeReading, type Sayable } from '../../../src/core/meter/encode-reading.js';
import { type ReadingFlag, readingFlags } from '../../../src/core/reading.js';
import { driverIds, shippedDriver } from '../../support/driver-files.js';

describe.each(driverIds)('encodeReading for %s', (id) => {
  const driver = shippedDriver(id);
  const decoder = compileDriver(driver);
  const sayableFlags = readingFlags.filter((flag) =>
    Object.values(driver.line?.flags ?? {}).includes(flag),
  );
  const row = fc.constantFrom(...driver.accuracy);
  const flags = fc
    .subarray<ReadingFlag>([...sayableFlags])
    .map((set) => (set.length > 0 ? { flags: set } : {}));

  it('should give a value back to the display step, with function, resolution and flags', () => {
    fc.assert(
      fc.property(
        row,
        fc.double({ min: -0.05, max: 1, noNaN: true }),
        flags,
        (display, share, flagged) => {
          const steps = Math.round((share * display.fullScale) / display.resolution);
          const value = share * display.fullScale;
          const context = { t: 3, function: display.function, ...flagged };
          const frame = encodeReading(driver, { ...context, value }, display);
          const heard = decoder.decode(3, frame, {
            function: display.function,
            range: display.fullScale,
          });
          expect(heard).toMatchObject(context);
          expect(heard).toHaveProperty('value', expect.closeTo(steps * display.resolution, 9));
          expect(heard).toHaveProperty('resolution', expect.closeTo(display.resolution, 9));
          if ('range' in heard) expect(heard.range).toBe(display.fullScale);
        },
      ),
      { seed: 20260131, numRuns: 300 },
    );
  });

  it('should give an overload back on every range', () => {
    fc.assert(
      fc.property(row, flags, (display, flagged) => {
        const said: Sayable = { t: 3, function: display.function, ...flagged, overload: true };
        const heard = decoder.decode(3, encodeReading(driver, said, display), {
          function: display.function,
        });
        expect(heard).toMatchObject(said);
      }),
      { seed: 20260131 },
    );
  });

  it('should never give a blank back as a value', () => {
    for (const display of driver.accuracy) {
      const said: Sayable = { t: 3, function: display.function, blank: true };
      const heard = decoder.decode(3, encodeReading(driver, said, display), {
        function: display.function,
      });
      expect(heard).not.toHaveProperty('value');
      if (driver.line) expect(heard).toMatchObject(said);
    }
  });

  it('should keep within the longest frame of the wire', () => {
    for (const display of driver.accuracy) {
      const said: Sayable = {
        t: 0,
        function: display.function,
        flags: sayableFlags,
        value: -display.fullScale,
      };
      expect(encodeReading(driver, said, display).length).toBeLessThanOrEqual(driver.wire.maxFrame);
    }
  });
});

describe('encodeReading', () => {
  const value: Sayable = { t: 0, function: 'resistance', value: 4712.34 };

  it('should choose the unit a display of that range shows', () => {
    const driver = shippedDriver('stream-value-unit');
    expect(
      encodeReading(driver, { ...value, value: 389.64 }, { fullScale: 600, resolution: 0.1 }),
    ).toBe('  389.6 Ohm');
    expect(encodeReading(driver, value, { fullScale: 6e3, resolution: 1 })).toBe('  4.712 kOhm');
    expect(encodeReading(driver, value, { fullScale: 6e6, resolution: 1e3 })).toBe('  0.005 MOhm');
  });

  it('should write each kind of line', () => {
    const said: Sayable = { ...value, flags: ['hold', 'low-battery'] };
    const at = (id: string, fullScale: number, resolution: number) =>
      encodeReading(shippedDriver(id), said, { fullScale, resolution });
    expect(at('scpi-read', 1e4, 0.1)).toBe('+4.71230000E+03');
    expect(at('scpi-measure', 6e3, 1)).toBe('+  4.7120E+03');
    expect(at('stream-fields-flags', 6e3, 0.1)).toBe('RES,+4.7123,KOHM,H--B');
    expect(at('stream-range-code', 4e4, 1)).toBe('R2+004712h..b');
    expect(at('stream-decimal-comma', 5e3, 0.1)).toBe('4,7123;kOhm;R;HOLDBATT');
  });

  it('should refuse a display the driver has no range code for', () => {
    expect(() =>
      encodeReading(shippedDriver('stream-range-code'), value, { fullScale: 123, resolution: 1 }),
    ).toThrow(RangeError);
  });

  it('should refuse a driver that does not say how its meter speaks', () => {
    const { speak: _, ...silent } = shippedDriver('stream-value-unit');
    expect(() => encodeReading(silent, value, { fullScale: 6e3, resolution: 1 })).toThrow(
      TypeError,
    );
  });
});

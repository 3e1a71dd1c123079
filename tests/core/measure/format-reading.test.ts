import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { engineeringPrefix } from '../../../src/core/measure/engineering-prefix.js';
import { formatReading } from '../../../src/core/measure/format-reading.js';
import { formatReadingWithUncertainty } from '../../../src/core/measure/format-reading-with-uncertainty.js';
import { twoDigitUncertainty } from '../../../src/core/measure/two-digit-uncertainty.js';
import { writeToPlace } from '../../../src/core/measure/write-to-place.js';

describe('formatReading', () => {
  it.each([
    [389.6, 1.298, 'Ω', '389.6 Ω'],
    [4703, 31, 'Ω', '4.70 kΩ'],
    [0.512, 0.0032, 'V', '0.512 V'],
    [389.6, 30, 'Ω', '390 Ω'],
    [12_345, 100, 'Ω', '12.35 kΩ'],
    [2.2e6, 9960, 'Ω', '2.200 MΩ'],
    [0.0123, 0.0004, 'V', '12.3 mV'],
    // No coarser just under a power of ten than just over it.
    [389.6, 0.96, 'Ω', '389.6 Ω'],
    [389.6, 1.04, 'Ω', '389.6 Ω'],
    // Rounding up may reach the next prefix.
    [999.97, 1.2, 'Ω', '1.0000 kΩ'],
    // The uncertainty may exceed the value, which may vanish in it; no minus is left on a zero.
    [0, 0.06, 'Ω', '0 mΩ'],
    [-0.0001, 0.003, 'V', '0 mV'],
    [-0.512, 0.0032, 'V', '-0.512 V'],
  ])('should write %d with %d %s as %s', (value, u, unit, text) => {
    expect(formatReading(value, u, unit)).toBe(text);
  });

  it.each([
    [389.6, 'Ω', '389.6 Ω'],
    [0.512, 'V', '0.512 V'],
    [4700, 'Ω', '4.7 kΩ'],
    [4702.6, 'Ω', '4.703 kΩ'],
    [999.96, 'Ω', '1 kΩ'],
    [0.3, 'Ω', '0.3 Ω'],
    [0.0471, 'V', '47.1 mV'],
    [4.7e-7, 'V', '470 nV'],
    [3.3e9, 'Ω', '3.3 GΩ'],
    [0, 'V', '0 V'],
    [-0, 'V', '0 V'],
  ])('should claim four digits at most for %d %s without an uncertainty', (value, unit, text) => {
    expect(formatReading(value, null, unit)).toBe(text);
  });

  it.each([0, -1, NaN, Infinity, 1e-300])('should take an uncertainty of %d as not known', (u) => {
    expect(formatReading(389.6, u, 'Ω')).toBe('389.6 Ω');
    expect(formatReadingWithUncertainty(389.6, u, 'Ω')).toBe('389.6 Ω');
  });
});

describe('formatReadingWithUncertainty', () => {
  it.each([
    [389.6, 1.298, 'Ω', '389.6(13) Ω'],
    [4703, 31, 'Ω', '4.703(31) kΩ'],
    [0.512, 0.003223, 'V', '0.5120(32) V'],
    [389.6, 130, 'Ω', '390(130) Ω'],
    [389.6, 0.0996, 'Ω', '389.60(10) Ω'],
    [999.97, 1.2, 'Ω', '1.0000(12) kΩ'],
    [-0.0001, 0.003, 'V', '-0.1(30) mV'],
  ])('should write %d with %d %s as %s', (value, u, unit, text) => {
    expect(formatReadingWithUncertainty(value, u, unit)).toBe(text);
  });

  it('should be as GUM 7.2.2 writes a mass of 100.02147 g with 0.35 mg (memory)', () => {
    expect(formatReadingWithUncertainty(100.02147, 0.00035, 'g')).toBe('100.02147(35) g');
  });
});

describe('both', () => {
  const number = fc.double();
  const forms = [formatReading, formatReadingWithUncertainty];

  it('should write a word for what is not a number, and never NaN, Infinity or a minus zero', () => {
    for (const write of forms) {
      for (const value of [NaN, Infinity, -Infinity]) expect(write(value, 1, 'Ω')).toBe('no value');
      fc.assert(
        fc.property(number, fc.option(number), (value, u) => {
          const text = write(value, u, 'Ω');
          expect(text).not.toMatch(/NaN|Infinity/u);
          expect(text).not.toMatch(/^-0(\.0*)?[ (]/u);
          expect(text).toMatch(/^(no value|-?\d[\d.e+-]*(\(\d+\))? [GMkmµn]?Ω)$/u);
        }),
        { seed: 20260131, numRuns: 2000 },
      );
    }
  });

  it('should stay within half a last digit of the value', () => {
    const factor = { G: 1e9, M: 1e6, k: 1e3, '': 1, m: 1e-3, µ: 1e-6, n: 1e-9 } as const;
    const ohms = fc.double({ min: 1e-3, max: 1e8, noNaN: true });
    const share = fc.double({ min: 1e-4, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(ohms, share, (value, relative) => {
        const text = formatReading(value, value * relative, 'Ω');
        const [, digits = '', prefix = ''] = /^([\d.]+) ([GMkmµn]?)Ω$/u.exec(text) ?? [];
        const written = Number(digits) * factor[prefix as keyof typeof factor];
        // One digit of the uncertainty is kept at least: half of it is the most that rounding takes.
        expect(Math.abs(written - value)).toBeLessThanOrEqual(
          value * relative * 0.51 + value * 1e-12,
        );
      }),
      { seed: 20260131, numRuns: 1000 },
    );
  });
});

describe('twoDigitUncertainty', () => {
  it('should carry where rounding gains a digit', () => {
    expect(twoDigitUncertainty(1.298)).toEqual({ place: -1, steps: 13 });
    expect(twoDigitUncertainty(0.0996)).toEqual({ place: -2, steps: 10 });
  });

  it.each([0, -1, NaN, Infinity])('should refuse %d', (u) => {
    expect(() => twoDigitUncertainty(u)).toThrow('above 0');
  });
});

describe('engineeringPrefix and writeToPlace', () => {
  it('should keep tenths in the plain unit, and the outermost prefixes beyond them', () => {
    expect(engineeringPrefix(0.1).symbol).toBe('');
    expect(engineeringPrefix(0.0999).symbol).toBe('m');
    expect(engineeringPrefix(-4700).symbol).toBe('k');
    expect(engineeringPrefix(0).symbol).toBe('');
    expect(engineeringPrefix(1e-15).symbol).toBe('n');
    expect(engineeringPrefix(1e15).symbol).toBe('G');
  });

  it('should round away from zero alike on both sides', () => {
    expect(writeToPlace(2.5, { place: 0, steps: 1 }).digits).toBe('3');
    expect(writeToPlace(-2.5, { place: 0, steps: 1 }).digits).toBe('-3');
  });
});

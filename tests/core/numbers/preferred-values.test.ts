import { describe, expect, it } from 'vitest';
import { parseResistorCode } from '../../../src/core/numbers/parse-resistor-code.js';
import { eSeriesNames, preferredValues } from '../../../src/core/numbers/preferred-values.js';
import { preferredValuesBetween } from '../../../src/core/numbers/preferred-values-between.js';

describe('preferredValues', () => {
  it.each(eSeriesNames)(
    '%s should rise within its decade and have its number of values',
    (series) => {
      const values = preferredValues(series);
      expect(values).toHaveLength(Number(series.slice(1)));
      expect(values.every((value, i) => i === 0 || value > (values[i - 1] ?? Infinity))).toBe(true);
      expect(values[0]).toBe(100);
      expect(values.at(-1)).toBeLessThan(1000);
    },
  );
});

describe('preferredValuesBetween', () => {
  it('should give exact decimals across decades, ends included', () => {
    expect(preferredValuesBetween(0.1, 1, 'E6')).toEqual([0.1, 0.15, 0.22, 0.33, 0.47, 0.68, 1]);
    expect(preferredValuesBetween(300, 1500, 'E6')).toEqual([330, 470, 680, 1000, 1500]);
    expect(preferredValuesBetween(4700, 4700, 'E24')).toEqual([4700]);
    expect(preferredValuesBetween(4701, 5000, 'E24')).toEqual([]);
  });

  it('should refuse bounds the wrong way round, at zero, or without end', () => {
    expect(() => preferredValuesBetween(10, 5, 'E6')).toThrow('0 < low <= high');
    expect(() => preferredValuesBetween(0, 5, 'E6')).toThrow('0 < low <= high');
    expect(() => preferredValuesBetween(1, Infinity, 'E6')).toThrow('0 < low <= high');
  });
});

describe('parseResistorCode', () => {
  it('should take a small k or r, as people write it', () => {
    expect(parseResistorCode('4k7').ohms).toBe(4700);
    expect(parseResistorCode('47r').ohms).toBe(47);
  });

  it('should take a tolerance straight after the multiplier', () => {
    expect(parseResistorCode('47KJ')).toEqual({ ohms: 47_000, tolerance: 0.05 });
    expect(parseResistorCode('R47F')).toEqual({ ohms: 0.47, tolerance: 0.01 });
  });

  it.each([
    '',
    'R',
    'KK',
    '4.7K',
    '470',
    '4K7Q',
    '4K7K1',
    '-4K7',
    '4m7',
    ' 4K7',
    '4K7\n',
    '1234567K',
    '4\u202eK7',
  ])('should refuse %j in one line that does not repeat it', (text) => {
    expect(() => parseResistorCode(text)).toThrow(
      /^not a resistor code: write it like R47, 4R7, 470R, 4K7 or 2M2$/u,
    );
  });
});

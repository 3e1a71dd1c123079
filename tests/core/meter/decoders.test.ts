// What the recordings of the shipped drivers do not reach: rules of the decoders for drivers of other kinds, and
// frames nobody thought of.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileDriver } from '../../../src/core/meter/compile-driver.js';
import type { Driver, LineGrammar } from '../../../src/core/meter/driver-format.js';
import { compilePattern } from '../../../src/core/meter/line-pattern.js';
import { isFault, isValue, type Reading } from '../../../src/core/reading.js';
import { driverIds, shippedDriver } from '../../support/driver-files.js';

const withLine = (line: LineGrammar): Driver => {
  const { talk, ...rest } = shippedDriver('stream-value-unit');
  return { ...rest, talk, line };
};
const decode = (line: LineGrammar, frame: string): Reading =>
  compileDriver(withLine(line)).decode(1, frame, { function: 'resistance' });

describe('a line grammar', () => {
  it('should use its own function where the line tells none', () => {
    const line = { pattern: '(?P<value>[\\d.]+)', function: 'diode', overload: {} } as const;
    expect(decode(line, '0.512')).toEqual({
      t: 1,
      function: 'diode',
      range: 3,
      resolution: 0.001,
      value: 0.512,
    });
  });

  it('should not tell the range where two ranges have the same steps', () => {
    const line: LineGrammar = { pattern: '(?P<value>[\\d.]+)', overload: {} };
    const driver = withLine(line);
    const [row] = driver.accuracy.filter(({ fullScale }) => fullScale === 600);
    if (!row) throw new Error('the range of 600 ohm should be there');
    const twins = { ...driver, accuracy: [...driver.accuracy, { ...row, fullScale: 300 }] };
    const asked = { function: 'resistance' } as const;
    expect(compileDriver(driver).decode(1, '389.6', asked)).toHaveProperty('range', 600);
    expect(compileDriver(twins).decode(1, '389.6', asked)).not.toHaveProperty('range');
  });

  it('should take the function asked for where nothing tells one', () => {
    expect(decode({ pattern: '(?P<value>[\\d.]+)', overload: {} }, '389.6')).toMatchObject({
      function: 'resistance',
    });
  });

  it('should refuse a range code that belongs to another function than the one sent', () => {
    const line: LineGrammar = {
      pattern: '(?P<function>[RD])(?P<range>\\w)(?P<value>\\d+)',
      functions: { R: 'resistance', D: 'diode' },
      ranges: { a: { function: 'resistance', fullScale: 600, resolution: 0.1, factor: 0.1 } },
      overload: {},
    };
    expect(decode(line, 'Ra3896')).toEqual({
      t: 1,
      function: 'resistance',
      range: 600,
      resolution: 0.1,
      value: 389.6,
    });
    expect(decode(line, 'Da3896')).toEqual({
      t: 1,
      fault: 'range does not fit the function: "Da3896"',
    });
  });

  it('should take the longest flag codes first', () => {
    const line: LineGrammar = {
      pattern: '(?P<value>[\\d.]+)(?P<flags>.*)',
      flags: { M: 'minmax', HM: 'hold', B: 'low-battery' },
      overload: {},
    };
    expect(decode(line, '1.5 HM')).toMatchObject({ flags: ['hold'] });
    expect(decode(line, '1.5 HM M')).toMatchObject({ flags: ['hold', 'minmax'] });
    expect(decode(line, '1.5 AUTO')).not.toHaveProperty('flags');
  });

  it('should take the resolution of an exponent form from the accuracy table, not from padding', () => {
    const line: LineGrammar = {
      pattern: '(?P<value>\\S+) (?P<unit>\\w+)',
      units: { OHM: { factor: 1, functions: ['resistance'] } },
      overload: {},
    };
    expect(decode(line, '+3.8960000E+02 OHM')).toEqual({
      t: 1,
      function: 'resistance',
      resolution: 0.1,
      value: 389.6,
    });
    expect(decode(line, '+9.9E37 OHM')).toEqual({ t: 1, function: 'resistance', overload: true });
  });

  it('should read a line of blanks as an empty display only where the driver says so', () => {
    const line: LineGrammar = { pattern: '(?P<value>[\\d.]+)', overload: {}, blanks: [''] };
    expect(decode(line, '    ')).toEqual({ t: 1, function: 'resistance', blank: true });
    expect(decode({ ...line, blanks: [] }, '    ')).toEqual({
      t: 1,
      fault: 'not understood: "    "',
    });
  });

  it.each(['constructor', '__proto__', 'toString'])(
    'should find nothing under the code %s',
    (code) => {
      const line: LineGrammar = {
        pattern: '(?P<function>\\w+) (?P<value>[\\d.]+) (?P<unit>\\w+)',
        functions: { R: 'resistance' },
        units: { O: { factor: 1, functions: ['resistance'] } },
        overload: {},
      };
      expect(decode(line, `${code} 1 O`)).toEqual({
        t: 1,
        fault: `function not offered: "${code} 1 O"`,
      });
      expect(decode(line, `R 1 ${code}`)).toEqual({ t: 1, fault: `unit not known: "R 1 ${code}"` });
    },
  );

  it('should serve a SCPI meter that sends units', () => {
    const { line } = withLine({
      pattern: '(?P<value>\\S+) (?P<unit>\\w+)',
      units: { OHM: { factor: 1, functions: ['resistance'] } },
      overload: {},
    });
    const scpi: Driver = { ...shippedDriver('scpi-read'), ...(line ? { line } : {}) };
    expect(
      compileDriver(scpi).decode(1, '+3.896E+02 OHM', { function: 'resistance' }),
    ).toMatchObject({ value: 389.6 });
  });
});

describe('compileDriver', () => {
  it('should refuse a streaming driver without a line grammar', () => {
    const { line: _, ...rest } = shippedDriver('stream-value-unit');
    expect(() => compileDriver(rest)).toThrow(TypeError);
  });

  it('should refuse a pattern that does not compile', () => {
    expect(() => decode({ pattern: '(?P<value>', overload: {} }, '1')).toThrow(SyntaxError);
  });
});

describe('compilePattern', () => {
  it('should match the whole text only', () => {
    const pattern = compilePattern('(?P<value>\\d+)');
    expect(pattern.match('389')?.('value')).toBe('389');
    expect(pattern.match('389\n')).toBeNull();
    expect(pattern.match('x389')).toBeNull();
  });

  it.each(['(?=a)', '(a)\\1', '(?<!a)b', '(a{1000}){1000}'])('should refuse %s', (source) => {
    expect(() => compilePattern(source)).toThrow(SyntaxError);
  });

  // The textbook case of catastrophic backtracking: a backtracking engine needs 2^4000 steps for this.
  it('should take linear time for any pattern', () => {
    expect(compilePattern('(?P<value>(a*)*)b').match('a'.repeat(4000))).toBeNull();
    expect(compilePattern('(?:a|a|aa)+(?P<value>b)').match('a'.repeat(4000))).toBeNull();
  });
});

describe.each(driverIds)('the decoder of %s', (id) => {
  const decoder = compileDriver(shippedDriver(id));
  const anyFrame = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 40 }),
    fc.string({ unit: fc.constantFrom(...'+-0123456789.,;E RESOHMkV_?#"'), maxLength: 30 }),
  );

  it('should never throw and never give a number that is not finite', () => {
    fc.assert(
      fc.property(anyFrame, (frame) => {
        const reading = decoder.decode(2, frame, { function: 'resistance' });
        expect(reading.t).toBe(2);
        if (isValue(reading)) expect(Number.isFinite(reading.value)).toBe(true);
        if (isFault(reading)) {
          expect(reading.fault).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
          expect(Array.from(reading.fault).length).toBeLessThanOrEqual(120);
        }
      }),
      { seed: 20260131, numRuns: 500 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CsvError, csvRecords } from '../../../src/core/learn/csv-records.js';

const fieldsOf = (text: string): (readonly string[])[] =>
  [...csvRecords(text)].map(({ fields }) => fields);

const errorOf = (text: string): CsvError => {
  try {
    fieldsOf(text);
  } catch (error) {
    if (error instanceof CsvError) return error;
    throw error;
  }
  throw new Error('no error');
};

describe('csvRecords', () => {
  // The examples of RFC 4180, section 2, rules 1 to 7 (from memory).
  it.each([
    ['aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n'],
    ['aaa,bbb,ccc\r\nzzz,yyy,xxx'],
    ['"aaa","bbb","ccc"\r\nzzz,yyy,xxx'],
  ])('should read %j', (text) => {
    expect(fieldsOf(text)).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });

  it('should keep line ends and commas in quotes, and undouble quotes', () => {
    expect(fieldsOf('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(fieldsOf('"aaa","b""bb","c,cc"')).toEqual([['aaa', 'b"bb', 'c,cc']]);
  });

  it('should keep blanks and empty fields', () => {
    expect(fieldsOf(' a , b\n,\n"",x')).toEqual([
      [' a ', ' b'],
      ['', ''],
      ['', 'x'],
    ]);
  });

  it('should count lines by where a record begins, also past quoted line ends and blank lines', () => {
    const records = [...csvRecords('a\n\n"b\nb"\n\nc\r\nd\r')];
    expect(records.map(({ line, fields }) => [line, fields[0]])).toEqual([
      [1, 'a'],
      [3, 'b\nb'],
      [6, 'c'],
      [7, 'd'],
    ]);
  });

  it('should pass over a byte order mark', () => {
    expect(fieldsOf('\uFEFFpin,value')).toEqual([['pin', 'value']]);
  });

  it('should read nothing from nothing', () => {
    expect(fieldsOf('')).toEqual([]);
    expect(fieldsOf('\n\r\n')).toEqual([]);
  });

  it.each([
    ['a,b\nc,"d', 2, 'never closed'],
    ['a,b\nc,d"e', 2, 'inside a field'],
    ['a\n"b"c', 2, 'inside a field'],
    ['"a\nb\nc"d', 3, 'inside a field'],
  ])('should refuse %j in line %i', (text, line, what) => {
    const error = errorOf(text);
    expect(error.line).toBe(line);
    expect(error.message).toContain(what);
  });

  it('should read a field of a megabyte', () => {
    const long = `${'x'.repeat(500_000)}""${'y'.repeat(500_000)}`;
    expect(fieldsOf(`"${long}",1`)[0]?.[0]).toHaveLength(1_000_001);
    expect(errorOf(`"${long}`).line).toBe(1);
  });

  it('should give back whatever was written by the rules', () => {
    const field = fc.string({ unit: fc.constantFrom('a', '"', ',', '\n', '\r', ' ', '1', 'µ') });
    const table = fc.array(fc.array(field, { minLength: 2, maxLength: 4 }), { maxLength: 6 });
    fc.assert(
      fc.property(table, fc.constantFrom('\n', '\r\n'), (records, end) => {
        const written = records
          .map((fields) => fields.map((one) => `"${one.replaceAll('"', '""')}"`).join(','))
          .join(end);
        expect(fieldsOf(written)).toEqual(records);
      }),
      { seed: 461, numRuns: 200 },
    );
  });
});

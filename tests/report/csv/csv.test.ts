import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvField, csvRecord } from '../../../src/report/csv/csv-field.js';
import { renderCsv } from '../../../src/report/csv/render-csv.js';
import { attacks, hostileSession } from '../hostile-session.js';
import { makeReport } from '../make-report.js';
import { passedOn } from '../passed-on-session.js';
import { eventful } from '../session-events.js';

/** A reader after RFC 4180, written from its grammar (section 2) and nothing else. */
const parse = (text: string): string[][] => {
  const records: string[][] = [];
  let record: string[] = [];
  let at = 0;
  while (at < text.length) {
    let field = '';
    if (text[at] === '"') {
      at += 1;
      for (;;) {
        if (text[at] === undefined) throw new Error('a quoted field has no end');
        if (text[at] === '"' && text[at + 1] !== '"') break;
        if (text[at] === '"') at += 1;
        field += text[at];
        at += 1;
      }
      at += 1;
    } else {
      while (text[at] !== undefined && text[at] !== ',' && !text.startsWith('\r\n', at)) {
        if (text[at] === '"' || text[at] === '\n') throw new Error(`bare ${text[at]} in a field`);
        field += text[at];
        at += 1;
      }
    }
    record.push(field);
    if (text[at] === ',') {
      at += 1;
      continue;
    }
    if (!text.startsWith('\r\n', at)) throw new Error('a record has no line end');
    at += 2;
    records.push(record);
    record = [];
  }
  return records;
};

describe('csvRecord', () => {
  it('should quote as RFC 4180, 2.5 to 2.7', () => {
    expect(csvRecord(['aaa', 'b\r\nbb', 'ccc'])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(csvRecord(['b"bb', 'a,b'])).toBe('"b""bb","a,b"\r\n');
  });

  it('should be read back as it was, formulas led by an apostrophe', () => {
    const texts = fc.array(fc.string({ unit: 'binary', maxLength: 12 }), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(texts, (fields) => {
        const [record] = parse(csvRecord(['first', ...fields]));
        const read = record?.slice(1).map((field, at) => {
          const given = fields[at] ?? '';
          return field === `'${given}` && field !== given ? field.slice(1) : field;
        });
        expect(read).toEqual(fields);
      }),
      { seed: 8 },
    );
  });

  it.each(['=1+1', '+1', '-1', '@x', '  =1', '\t=1', '＝1', '＠x', '|x', '%x'])(
    'should keep %j from being run as a formula',
    (text) => {
      expect(parse(csvRecord([text]))).toEqual([[`'${text}`]]);
    },
  );

  it('should write numbers as they are, negative ones too, and refuse what is none', () => {
    expect(csvField(-0.2)).toBe('-0.2');
    expect(() => csvField(Number.NaN)).toThrow(RangeError);
  });
});

describe('pins as CSV', () => {
  const records = parse(renderCsv(makeReport(eventful)));
  const [header = [], ...rows] = records;
  const cell = (pin: string, column: string): string | undefined =>
    rows.find((row) => row[header.indexOf('pin')] === pin)?.[header.indexOf(column)];

  it('should have one record a pin, all of one length', () => {
    expect(rows).toHaveLength(8);
    expect(new Set(records.map(({ length }) => length)).size).toBe(1);
  });

  it('should give values in SI units with their uncertainty, and nothing where nothing was read', () => {
    expect([cell('4', 'value'), cell('4', 'unit'), cell('4', 'standard_uncertainty')]).toEqual([
      '1213',
      'ohm',
      '9',
    ]);
    expect([cell('2', 'value'), cell('2', 'overload'), cell('2', 'verdict')]).toEqual([
      '',
      'yes',
      'open',
    ]);
    expect([cell('8', 'value'), cell('8', 'confidence'), cell('8', 'verdict')]).toEqual([
      '',
      '',
      'unread',
    ]);
    expect(cell('6', 'expected_overload')).toBe('yes');
    expect(cell('4', 'touches')).toBe('2');
  });

  it('should say in every record whether it is simulated', () => {
    const simulated = eventful.map((event) =>
      event.type === 'session-opened' ? { ...event, simulated: true } : event,
    );
    const [head = [], ...all] = parse(renderCsv(makeReport(simulated)));
    expect(all.map((row) => row[head.indexOf('simulated')])).toEqual(Array(8).fill('yes'));
    expect(cell('1', 'simulated')).toBe('no');
  });

  it.each(attacks)('should hold no formula from elsewhere: %j', (text) => {
    const [head = [], ...all] = parse(renderCsv(makeReport(hostileSession(text))));
    expect(all).toHaveLength(8);
    for (const row of all) {
      expect(row).toHaveLength(head.length);
      for (const field of row) {
        if (!Number.isFinite(Number(field))) expect(field).not.toMatch(/^\s*[=+\-@|%＝＋－＠]/u);
      }
    }
  });
});

describe('CSV of a session passed on', () => {
  it('should say in every record that the customer data is gone', () => {
    const column = (events: Parameters<typeof makeReport>[0]): (string | undefined)[] => {
      const [head = [], ...records] = parse(renderCsv(makeReport(events)));
      return records.map((record) => record[head.indexOf('redacted')]);
    };
    expect(new Set(column(passedOn))).toEqual(new Set(['yes']));
    expect(new Set(column(eventful))).toEqual(new Set(['no']));
  });
});

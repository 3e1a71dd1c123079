import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJson } from '../../../src/core/definition/json-source.js';

const layout = fc.constantFrom<string | number>('', 1, 2, '\t');
const isHarmless = (json: string) => !json.includes('__proto__');

describe('reading JSON', () => {
  it('should give what JSON.parse gives', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), layout, (value, space) => {
        const text = JSON.stringify(value, null, space);
        fc.pre(isHarmless(text));
        expect(readJson(text).value).toEqual(JSON.parse(text));
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  it('should refuse whatever JSON.parse refuses, on a line of the text', () => {
    const mutilated = fc
      .tuple(
        fc.json({ maxDepth: 3 }),
        fc.nat(),
        fc.constantFrom('', '"', ',', '}', '\\', '\n', 'x', '-'),
      )
      .map(([json, at, put]) => {
        const cut = at % (json.length + 1);
        return json.slice(0, cut) + put + json.slice(cut + 1);
      });
    fc.assert(
      fc.property(mutilated, (text) => {
        let parses = true;
        try {
          JSON.parse(text);
        } catch {
          parses = false;
        }
        if (parses) return;
        const lines = text.split('\n').length;
        expect(() => readJson(text)).toThrow(
          expect.objectContaining({
            name: 'JsonError',
            line: expect.toSatisfy((line: number) => line >= 1 && line <= lines),
          }),
        );
      }),
      { seed: 5, numRuns: 1500 },
    );
  });

  it('should pass over a byte-order mark', () => {
    expect(readJson('\uFEFF{"a":1}').value).toEqual({ a: 1 });
  });

  it.each([
    ['a comma before a closing bracket', '{\n "a": 1,\n}', 2, 8, /remove the comma/],
    ['a missing comma', '{\n "a": 1\n "b": 2}', 3, 2, /a comma or } belongs here/],
    ['a missing colon', '{"a" 1}', 1, 6, /a colon belongs/],
    ['a key without quotes', '{\n  a: 1}', 2, 3, /a key in double quotes/],
    ['single quotes', '{"a": \'x\'}', 1, 7, /use double quotes/],
    ['a comment', '{\n// pins\n"a":1}', 2, 1, /a key in double quotes/],
    ['a comment for a value', '[ // pins\n1]', 1, 3, /no comments/],
    ['a bare word', '{"a": yes}', 1, 7, /put text in double quotes/],
    ['a leading plus', '[+1]', 1, 2, /plain number/],
    ['a leading point', '[.5]', 1, 2, /plain number/],
    ['a leading zero', '[007]', 1, 2, /plain number/],
    ['an ohm sign after a number', '[388Ω]', 1, 2, /plain number/],
    ['NaN', '[NaN]', 1, 2, /put text in double quotes/],
    ['a number out of this world', '[1e999]', 1, 2, /smaller one/],
    ['an open text', '{"a": "x', 1, 7, /closing "/],
    ['a line break in a text', '{"a": "x\ny"}', 1, 9, /close the quotes/],
    ['a lone backslash', '{"a": "C:\\data"}', 1, 7, /backslash/],
    ['an end too early', '{"a": [1, 2', 1, 12, /ends before a closing \]/],
    ['an empty file', '', 1, 1, /ends before the document/],
    ['a second document', '{}\n{}', 2, 1, /something follows/],
    [
      'a key given twice',
      '{\n"a": 1,\n"b": 2,\n"a": 3}',
      4,
      1,
      /"a" is here a second time, after line 2/,
    ],
    ['a key given twice by escapes', '{"a":1,"\\u0061":2}', 1, 8, /a second time/],
    ['a prototype key', '{"lines":{"__proto__":{}}}', 1, 11, /"__proto__" cannot be a key/],
  ])('should place and explain %s', (_, text, line, column, says) => {
    expect(() => readJson(text)).toThrow(expect.objectContaining({ line, column }));
    expect(() => readJson(text)).toThrow(says);
  });

  it('should refuse deep nesting without falling over', () => {
    expect(() => readJson('['.repeat(100_000))).toThrow(/too deep/);
    const deep = '['.repeat(60) + ']'.repeat(60);
    expect(readJson(deep).value).toEqual(JSON.parse(deep));
  });

  it('should show no control character of the text in its words', () => {
    expect(() => readJson('{"\\u001b[2J":1,"\\u001b[2J":2}')).toThrow(/^[^\p{Cc}]*$/u);
  });
});

describe('the line of a place', () => {
  const source = readJson(
    ['{', '  "pins": [', '    { "pin": "1" },', '    { "pin":', '        "2" }', '  ]', '}'].join(
      '\n',
    ),
  );

  it.each([
    [[], 1],
    [['pins'], 2],
    [['pins', 0], 3],
    [['pins', 0, 'pin'], 3],
    [['pins', 1], 4],
    [['pins', 1, 'pin'], 4],
  ])('should be found for %j', (path, line) => {
    expect(source.lineOf(path)).toBe(line);
  });

  it('should be the nearest parent for a place that is missing', () => {
    expect(source.lineOf(['pins', 1, 'row'])).toBe(4);
    expect(source.lineOf(['pins', 7, 'row'])).toBe(2);
    expect(source.lineOf(['lines', 'GND'])).toBe(1);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { importNotes } from '../../../src/core/learn/import-notes.js';
import { formatProblem } from '../../../src/core/problems.js';
import { small } from './good-boards.js';

const wanted = { function: 'resistance', polarity: 'red-walks' } as const;
const imported = (text: string) => importNotes('notes.csv', text, small, wanted);

const problemsOf = (text: string): string[] => {
  const found = imported(text);
  return found.ok ? [] : found.problems.map((problem) => formatProblem('F', problem));
};

describe('importNotes', () => {
  it('should read a board from pin, value and unit', () => {
    expect(imported('pin,value,unit\r\n2,388,Ω\r\n6,3.92,kΩ\r\n9,OL,\r\n')).toEqual({
      ok: true,
      board: {
        name: 'notes.csv',
        function: 'resistance',
        polarity: 'red-walks',
        wallTime: null,
        simulated: false,
        pins: [
          { pin: '2', line: 'D0_P', value: 388, standardUncertainty: null },
          { pin: '6', line: 'RESET', value: 3920, standardUncertainty: null },
          { pin: '9', line: 'AC', value: null, standardUncertainty: null },
        ],
      },
    });
  });

  it('should read values with a suffix, in any order of columns, among columns of its own', () => {
    const found = imported('Remark,VALUE,Pin\n"cold, dry",3k92,6\n,388,2\n');
    expect(found.ok && found.board.pins.map(({ pin, value }) => [pin, value])).toEqual([
      ['6', 3920],
      ['2', 388],
    ]);
  });

  it('should pass over pins without a value', () => {
    const found = imported('pin,value\n2,388\n3,\n');
    expect(found.ok && found.board.pins).toHaveLength(1);
  });

  it('should hold a line column against the profile', () => {
    expect(imported('pin,line,value\n2,D0_P,388\n').ok).toBe(true);
    expect(problemsOf('pin,line,value\n2,D0_N,388\n')).toEqual([
      'F:2: error: pin "2" carries "D0_P" in the profile, not "D0_N"; note the right pin, or change the profile',
    ]);
  });

  it('should tell each bad line once, with its number, and import nothing', () => {
    expect(problemsOf('pin,value\n2,388\n3,about 390\n99,5\n4,"3,9"\n2,389\n5\n6,1,2\n')).toEqual([
      'F:3: error: "about 390": this is no value; write 389.6, 4.7k or OL',
      'F:4: error: the profile has no pin "99"; did you mean "9"?',
      'F:5: error: "3,9": a decimal comma reads two ways; write a point, such as 0.47',
      'F:6: error: pin "2" is noted twice, first in line 2; keep one of them',
      'F:7: error: 1 columns where the first line has 2; put a field with a comma in quotes, and leave no column out',
      'F:8: error: 3 columns where the first line has 2; put a field with a comma in quotes, and leave no column out',
    ]);
  });

  it.each([
    ['', 'F:1: error: no column is called "pin"; begin with the line pin,value or pin,value,unit'],
    [
      '2,388\n',
      'F:1: error: no column is called "pin"; begin with the line pin,value or pin,value,unit',
    ],
    [
      'pin,ohms\n2,388\n',
      'F:1: error: no column is called "value"; begin with the line pin,value or pin,value,unit',
    ],
    [
      'pin,value,pin\n',
      'F:1: error: two columns are called "pin"; begin with the line pin,value or pin,value,unit',
    ],
    [
      'pin;value\n2;388\n',
      'F:1: error: the columns are not divided by commas; save the table with commas',
    ],
    ['pin,value\n2,\n', 'F: error: no pin has a value; note at least one, such as 1,389.6'],
    ['pin,value\n2,"388\n', 'F:2: error: a quote is never closed; close it with another "'],
  ])('should refuse %j', (text, problem) => {
    expect(problemsOf(text)).toEqual([problem]);
  });

  it('should show hostile text cleaned', () => {
    const [problem = ''] = problemsOf('pin,value\n\u001b]0;x\u0007\u202e1,5\n');
    expect(problem).toContain('no pin "␛]0;x␇');
    expect(problem).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
  });

  it('should tell at most a hundred problems', () => {
    const many = `pin,value\n${'99,1\n'.repeat(500)}`;
    expect(problemsOf(many)).toHaveLength(100);
  });

  it('should never throw, whatever the text', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        '"',
        ',',
        '\n',
        '\r',
        '2',
        '.',
        'k',
        'Ω',
        'OL',
        'pin',
        '\u202e',
        '\0',
        '\ud800',
      ),
      fc.integer({ min: 0, max: 0xffff }).map((unit) => String.fromCharCode(unit)),
    );
    fc.assert(
      fc.property(fc.string({ unit: piece, maxLength: 60 }), (text) => {
        for (const found of [imported(text), imported(`pin,value\n${text}`)]) {
          if (!found.ok) expect(found.problems.length).toBeGreaterThan(0);
        }
      }),
      { seed: 471, numRuns: 300 },
    );
  });
});

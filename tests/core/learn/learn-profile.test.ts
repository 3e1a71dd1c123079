import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Board } from '../../../src/core/learn/board.js';
import type { LearnedLine } from '../../../src/core/learn/learn-line.js';
import {
  type Learned,
  type LearnOptions,
  learnProfile,
} from '../../../src/core/learn/learn-profile.js';
import { checkProfile } from '../../../src/core/profile/check-profile.js';
import { planWalk } from '../../../src/core/profile/plan.js';
import type { Profile } from '../../../src/core/profile/profile-format.js';
import { readProfile } from '../../support/read-profile.js';
import { board, boards, goodValues, options, small } from './good-boards.js';

const learnFrom = (
  given: readonly Board[],
  change: Partial<LearnOptions> = {},
  profile: Profile = small,
): Learned => {
  const outcome = learnProfile(given, profile, { ...options, ...change });
  if (!outcome.ok) throw new Error(`refused: ${JSON.stringify(outcome.refused)}`);
  return outcome.learned;
};

const refusals = (
  given: readonly Board[],
  change: Partial<LearnOptions> = {},
): readonly object[] => {
  const outcome = learnProfile(given, small, { ...options, ...change });
  return outcome.ok ? [] : outcome.refused;
};

const lineOf = (learned: Learned, name: string): LearnedLine | undefined =>
  learned.lines.find(({ line }) => line === name);

describe('learnProfile', () => {
  const six = learnFrom(boards(6));

  it('should give every line but the grounds what the boards read', () => {
    expect(six.lines.map(({ line, outcome }) => `${line} ${outcome}`)).toEqual([
      'D0_P value',
      'D0_N value',
      'D1_P value',
      'D1_N value',
      'RESET value',
      'VCC value',
      'AC overload',
      'NC overload',
    ]);
    const expected = six.profile.lines.D0_P?.expect?.resistance;
    expect(expected).toMatchObject({ polarity: 'red-walks', from: { boards: 6 } });
    expect(typeof expected === 'object' && expected.nominal / 388).toBeCloseTo(1, 2);
    expect(six.profile.lines.AC?.expect).toEqual({ resistance: 'overload' });
    expect(six.profile.lines.GND).toEqual({ kind: 'ground' });
  });

  it('should give a profile that validates and by which the same boards are normal', () => {
    const read = readProfile(JSON.stringify(six.profile));
    expect(read.problems).toEqual([]);
    for (const { pin, expected } of planWalk(six.profile).pins) {
      if (typeof expected !== 'object' || expected === null || expected.nominal === 0) continue;
      const value = goodValues[pin] ?? 0;
      expect(value).toBeGreaterThan(expected.low);
      expect(value).toBeLessThan(expected.high);
    }
  });

  it('should keep everything else, another function and the earlier origin among it', () => {
    expect(six.profile.lines.D1_P?.expect?.diode).toEqual({ nominal: 0.5, tolerance: 0.1 });
    expect(six.profile.connector).toEqual(small.connector);
    expect(six.profile.provenance).toEqual({
      by: 'a test',
      date: '2026-02-01',
      how: 'Expected resistance (red-walks) of 8 lines learned from 6 good boards. Before: Invented',
    });
    expect(small.lines.D0_P?.expect).toBeUndefined();
  });

  it('should not pile up origins when it learns again', () => {
    const again = learnFrom(boards(5), {}, six.profile);
    expect(again.profile.provenance.how).toBe(
      'Expected resistance (red-walks) of 8 lines learned from 5 good boards. Before: Invented',
    );
  });

  it('should keep the usual tolerance while boards are few: own, of kin, or of the trade', () => {
    const three = learnFrom(boards(3));
    const toleranceOf = (name: string) => {
      const expected = three.profile.lines[name]?.expect?.resistance;
      return typeof expected === 'object' ? expected.tolerance : null;
    };
    expect(toleranceOf('D1_P')).toBe(0.08);
    expect(toleranceOf('RESET')).toBe(0.08);
    // Common practice, no source: supplies within a fifth.
    expect(toleranceOf('VCC')).toBe(0.2);
    expect(lineOf(three, 'RESET')).toMatchObject({ by: 'usual', boards: 3 });
  });

  it('should take a line on several pins once', () => {
    expect(lineOf(six, 'VCC')).toMatchObject({ outcome: 'value', boards: 6 });
    expect(six.strayPins).toEqual([]);
  });

  it('should tell and leave out a pin whose joint is open or bad', () => {
    const learned = learnFrom([
      ...boards(4),
      board('open', 1.001, { '8': null }),
      board('bad', 0.999, { '7': 180 }),
    ]);
    expect(learned.strayPins).toEqual([
      { board: 'open', pin: '8', line: 'VCC', value: null },
      { board: 'bad', pin: '7', line: 'VCC', value: 180 },
    ]);
    const expected = learned.profile.lines.VCC?.expect?.resistance;
    expect(typeof expected === 'object' && expected.nominal / 146).toBeCloseTo(1, 2);
  });

  it('should leave out a board whose lines are all shifted', () => {
    const learned = learnFrom([...boards(4), board('warm', 1.07)]);
    expect(learned.outlyingBoards).toEqual([
      { board: 'warm', because: 'all-lines-shifted', by: expect.closeTo(0.07, 2) },
    ]);
    expect(learned.boards).toEqual(['b1', 'b2', 'b3', 'b4']);
    expect(learned.profile.lines.D0_P?.expect?.resistance).toMatchObject({ from: { boards: 4 } });
  });

  it('should leave out a board with many lines off', () => {
    const sick = board('sick', 1.001, { '2': 250, '3': 260, '6': null });
    const learned = learnFrom([...boards(5), sick]);
    expect(learned.outlyingBoards).toEqual([
      { board: 'sick', because: 'many-lines-off', lines: 3, of: 8 },
    ]);
    expect(learned.boards).not.toContain('sick');
  });

  it('should leave out the one value that is far off, and keep its board', () => {
    const learned = learnFrom([...boards(5), board('leaky', 1.001, { '6': 3300 })]);
    expect(learned.outlyingBoards).toEqual([]);
    expect(lineOf(learned, 'RESET')).toMatchObject({
      boards: 5,
      apart: [{ board: 'leaky', value: 3300, because: 'far-off' }],
    });
    expect(lineOf(learned, 'D0_P')).toMatchObject({ boards: 6, apart: [] });
  });

  it('should keep what good boards differ by, or its limits would be too tight', () => {
    const learned = learnFrom([...boards(5), board('other', 1.001, { '6': 1.06 * 3920 })]);
    expect(lineOf(learned, 'RESET')).toMatchObject({ boards: 6, apart: [] });
    const kept = lineOf(learned, 'RESET');
    expect(kept?.outcome === 'value' && kept.tolerance).toBeGreaterThan(0.1);
  });

  it('should keep boards and values that stand apart when told to', () => {
    const given = [...boards(4), board('warm', 1.07), board('leaky', 1.001, { '6': 3300 })];
    const learned = learnFrom(given, { outliers: 'keep' });
    expect(learned.boards).toHaveLength(6);
    expect(learned.outlyingBoards.map(({ board: name }) => name)).toEqual(['warm']);
    expect(lineOf(learned, 'RESET')).toMatchObject({ boards: 6 });
  });

  it('should leave out of few boards a value that the other lines show to be far off', () => {
    const learned = learnFrom([...boards(3), board('leaky', 1, { '6': 3000 })]);
    expect(lineOf(learned, 'RESET')).toMatchObject({
      boards: 3,
      apart: [{ board: 'leaky', because: 'far-off' }],
    });
  });

  it('should go with most boards on whether a line conducts', () => {
    const learned = learnFrom([
      ...boards(4),
      board('a', 1.001, { '9': 5000 }),
      board('b', 0.999, { '2': null }),
    ]);
    expect(lineOf(learned, 'AC')).toMatchObject({
      outcome: 'overload',
      apart: [{ board: 'a', value: 5000, because: 'conducts' }],
    });
    expect(lineOf(learned, 'D0_P')).toMatchObject({
      outcome: 'value',
      boards: 5,
      apart: [{ board: 'b', value: null, because: 'conducts-not' }],
    });
  });

  it('should not decide between two boards, and say that they disagree', () => {
    const learned = learnFrom([board('a'), board('b', 1.09, { '6': null })]);
    expect(learned.outlyingBoards.map(({ board: name, because }) => [name, because])).toEqual([
      ['a', 'two-disagree'],
      ['b', 'two-disagree'],
    ]);
    expect(learned.boards).toEqual(['a', 'b']);
    expect(lineOf(learned, 'RESET')).toMatchObject({ outcome: 'kept', because: 'undecided' });
    expect(learned.profile.lines.RESET).toEqual(small.lines.RESET);
  });

  it('should find nothing wrong with two boards that agree', () => {
    expect(learnFrom(boards(2)).outlyingBoards).toEqual([]);
  });

  it('should leave as it was what no board read', () => {
    const learned = learnFrom(
      boards(3).map(({ name }, at) => board(name, 1 + at / 1000, { '4': undefined })),
    );
    expect(lineOf(learned, 'D1_P')).toMatchObject({ outcome: 'kept', because: 'not-read' });
    expect(learned.profile.lines.D1_P).toEqual(small.lines.D1_P);
  });

  it('should record the range most boards were read on, and never mix two', () => {
    const onRange = (one: Board, range: number): Board => ({
      ...one,
      pins: one.pins.map((pin) => (pin.value === null ? pin : { ...pin, range })),
    });
    const learned = learnFrom([
      ...boards(4).map((one) => onRange(one, 6000)),
      onRange(board('other', 1.002), 120_000),
    ]);
    expect(learned.profile.lines.D0_P?.expect?.resistance).toMatchObject({ range: 6000 });
    expect(lineOf(learned, 'D0_P')).toMatchObject({
      boards: 4,
      range: 6000,
      apart: [{ board: 'other', because: 'other-range' }],
    });
    expect(lineOf(six, 'D0_P')).not.toHaveProperty('range');
  });

  it('should not learn a value that no good board can read', () => {
    const learned = learnFrom(
      boards(3).map(({ name }, at) => board(name, 1 + at / 1000, { '6': 0 })),
    );
    expect(lineOf(learned, 'RESET')).toMatchObject({ outcome: 'kept', because: 'undecided' });
  });

  it('should mark as demo what a simulated board taught', () => {
    const [first, ...rest] = boards(3) as [Board, ...Board[]];
    expect(learnFrom([{ ...first, simulated: true }, ...rest]).profile.demo).toBe(true);
    expect(six.profile.demo).toBeUndefined();
  });

  it('should take a new id', () => {
    expect(learnFrom(boards(3), { id: 'small-2' }).profile.id).toBe('small-2');
    expect(six.profile.id).toBe('small');
  });

  it('should learn a diode drop beside what it knows of resistance', () => {
    const inDiode = boards(3).map(
      (one): Board => ({
        ...one,
        function: 'diode',
        polarity: 'black-walks',
        pins: one.pins.map((pin) => ({
          ...pin,
          value: pin.value === null ? null : pin.value / 800,
          standardUncertainty: 0.002,
        })),
      }),
    );
    const learned = learnFrom(inDiode, { function: 'diode', polarity: 'black-walks' });
    expect(learned.profile.lines.D1_P?.expect).toMatchObject({
      resistance: { nominal: 500, tolerance: 0.08 },
      diode: { polarity: 'black-walks', tolerance: 0.1 },
    });
  });
});

describe('learnProfile refuses', () => {
  it('boards of another function or polarity, each by name', () => {
    const [one, two, three] = boards(3) as [Board, Board, Board];
    expect(
      refusals([one, { ...two, function: 'diode' }, { ...three, polarity: 'black-walks' }]),
    ).toEqual([
      { board: 'b2', because: 'other-function', is: 'diode', wanted: 'resistance' },
      { board: 'b3', because: 'other-polarity', is: 'black-walks', wanted: 'red-walks' },
    ]);
  });

  it('boards of another connector', () => {
    const [one] = boards(1) as [Board];
    const stray = { pin: '2', line: 'OTHER', value: 1, standardUncertainty: null };
    expect(refusals([{ ...one, pins: [stray] }])).toEqual([
      { board: 'b1', because: 'other-connector', pin: '2', line: 'OTHER', profileLine: 'D0_P' },
    ]);
    expect(refusals([{ ...one, pins: [{ ...stray, pin: '99' }] }])).toMatchObject([
      { because: 'other-connector', profileLine: null },
    ]);
  });

  it('a board given twice, by its hour or by its readings', () => {
    const [one, two] = boards(2) as [Board, Board];
    const at = '2026-01-31T09:15:30.000Z';
    expect(
      refusals([
        { ...one, wallTime: at },
        { ...two, wallTime: at },
      ]),
    ).toEqual([{ board: 'b2', because: 'same-board', as: 'b1' }]);
    expect(refusals([one, { ...one, name: 'copy' }])).toEqual([
      { board: 'copy', because: 'same-board', as: 'b1' },
    ]);
    expect(refusals(boards(2))).toEqual([]);
  });

  it('a board of which nothing was read', () => {
    const [one] = boards(1) as [Board];
    expect(refusals([{ ...one, pins: [] }])).toEqual([{ board: 'b1', because: 'nothing-read' }]);
  });

  it('no board, and two of one name', () => {
    expect(() => learnProfile([], small, options)).toThrow('one good board');
    const [one] = boards(1) as [Board];
    expect(() => learnProfile([one, one], small, options)).toThrow('names of their own');
  });
});

describe('learnProfile, from any boards', () => {
  const value = fc.oneof(
    fc.double({ min: 0, max: 1e8, noNaN: true }),
    fc.double({ min: 100, max: 110, noNaN: true }),
    fc.constant(null),
    fc.constant(undefined),
  );
  const anyBoard = fc.dictionary(fc.constantFrom(...Object.keys(goodValues)), value);

  it('should give a profile without errors, or refuse', () => {
    fc.assert(
      fc.property(
        fc.array(anyBoard, { minLength: 1, maxLength: 6 }),
        fc.constantFrom('leave-out' as const, 'keep' as const),
        (changes, outliers) => {
          const given = changes.map((change, at) => board(`b${at}`, 1 + at / 500, change));
          const outcome = learnProfile(given, small, { ...options, outliers });
          if (!outcome.ok) return;
          const { profile } = outcome.learned;
          const read = readProfile(JSON.stringify(profile));
          expect(read.content).toEqual(profile);
          expect(checkProfile(profile).filter(({ level }) => level !== 'warning')).toEqual([]);
        },
      ),
      { seed: 441, numRuns: 60 },
    );
  });

  it('should not depend on the order of the boards', () => {
    const given = [...boards(5), board('warm', 1.08), board('leaky', 1.001, { '6': 3300 })];
    const straight = learnFrom(given);
    fc.assert(
      fc.property(fc.shuffledSubarray(given, { minLength: 7, maxLength: 7 }), (shuffled) => {
        expect(learnFrom(shuffled).profile.lines).toEqual(straight.profile.lines);
      }),
      { seed: 442, numRuns: 10 },
    );
  });
});

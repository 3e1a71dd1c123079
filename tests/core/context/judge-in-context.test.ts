import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimateShift } from '../../../src/core/context/estimate-shift.js';
import { judgeInContext, judgeShifted } from '../../../src/core/context/judge-in-context.js';
import type { ReadPin } from '../../../src/core/context/read-pin.js';
import type { Plan, PlannedPin } from '../../../src/core/profile/plan.js';
import { judge } from '../../../src/core/walk/judge.js';
import {
  boardOf,
  demoDiodePlan,
  demoPlan,
  offsetBy,
  planOf,
  readsNothing,
  readsValue,
  scaledBy,
  signal,
  unread,
} from './demo-board.js';

const inContext = (pins: readonly ReadPin[], plan: Plan) => {
  const shifts = estimateShift(pins, plan);
  return { shifts, judgements: judgeInContext(pins, plan, shifts, judge) };
};

const verdicts = (pins: readonly ReadPin[], plan: Plan): ReadonlyMap<string, string> =>
  new Map(
    inContext(pins, plan).judgements.map(({ pin, line, verdict }) => [`${pin} ${line}`, verdict]),
  );

const abnormal = (pins: readonly ReadPin[], plan: Plan = demoPlan): string[] =>
  [...verdicts(pins, plan)]
    .filter(([, verdict]) => verdict !== 'normal')
    .map(([place, verdict]) => `${place} ${verdict}`);

const at = (factor: number, pin: PlannedPin): ReadPin => {
  const { expected } = pin;
  return typeof expected === 'object' && expected !== null
    ? readsValue(factor * expected.nominal, 0.0035 * factor * expected.nominal)
    : readsNothing;
};

describe('a board read by a meter that reads 6 % more', () => {
  /** Healthy lines, near their limits on both sides in truth; one leaky, one open. */
  const board = boardOf(demoPlan, (pin, good) => {
    switch (pin.line) {
      case 'LANE1_N':
        return readsNothing;
      case 'BUS_DATA':
        // Leaky: 86 % of what is expected, and yet within the limits as this meter shows it.
        return scaledBy(1.06, at(0.86, pin));
      case 'STROBE_P':
        // Healthy at 107 % of its nominal, and yet beyond the limit as this meter shows it.
        return scaledBy(1.06, at(1.07, pin));
      default:
        return scaledBy(1.06, good);
    }
  });

  it('should judge every line rightly', () => {
    expect(abnormal(board)).toEqual(['6 LANE1_N open', '31 BUS_DATA low']);
  });

  it('should judge them wrongly without the shift: the test can fail', () => {
    const alone = demoPlan.pins.map((pin) => {
      const read = board[pin.index];
      if (read?.value === null || read?.value === undefined) return judge(pin, { overload: true });
      return judge(pin, {
        value: read.value,
        standardUncertainty: read.standardUncertainty ?? 0,
      });
    });
    const of = (line: string) => alone[demoPlan.pins.findIndex((pin) => pin.line === line)];
    expect(of('BUS_DATA')?.verdict).not.toBe('low');
    expect(of('STROBE_P')?.verdict).toBe('high');
  });

  it('should tell the shift with the judgement, and the shifted limits as expected', () => {
    const { shifts, judgements } = inContext(board, demoPlan);
    expect(shifts.supply).toBeNull();
    const lane = judgements.find(({ line }) => line === 'LANE0_P');
    expect(lane?.shift).toBe(shifts.signal);
    const { expected } = lane ?? {};
    expect(typeof expected === 'object' && expected?.nominal).toBeCloseTo(388 * 1.06, 0);
  });

  it('should be unsure on a limit, not wrong', () => {
    const onLimit = boardOf(demoPlan, (pin, good) =>
      scaledBy(1.06, pin.line === 'STROBE_P' ? at(1.1, pin) : good),
    );
    expect(abnormal(onLimit)).toEqual(['11 STROBE_P unsure']);
  });
});

describe('a group that is off while the others are not', () => {
  it.each([
    [1.09, 'high'],
    [0.91, 'low'],
    [1.06, 'high'],
  ])('should stay visible at %f', (factor, verdict) => {
    const lines = Object.fromEntries(
      ['a', 'b', 'c', 'd'].flatMap((group) =>
        [1, 2, 3, 4].map((n) => [`${group}${n}`, signal(group, 1000 * n, 0.04)] as const),
      ),
    );
    const plan = planOf(lines);
    const board = boardOf(plan, ({ group }, good) =>
      group === 'b' ? scaledBy(factor, good) : good,
    );
    const found = inContext(board, plan);
    expect(found.shifts.signal).toBeNull();
    expect(
      found.judgements.filter((one) => one.verdict === verdict).map(({ line }) => line),
    ).toEqual(['b1', 'b2', 'b3', 'b4']);
  });

  it('should stay visible under a meter that is off as well', () => {
    const lines = Object.fromEntries(
      ['a', 'b', 'c', 'd', 'e'].flatMap((group) =>
        [1, 2, 3, 4].map((n) => [`${group}${n}`, signal(group, 1000 * n, 0.05)] as const),
      ),
    );
    const plan = planOf(lines);
    const board = boardOf(plan, ({ group }, good) =>
      scaledBy(group === 'b' ? 1.06 * 0.91 : 1.06, good),
    );
    expect(abnormal(board, plan)).toEqual(['5 b1 low', '6 b2 low', '7 b3 low', '8 b4 low']);
  });
});

describe('a board in diode test on a meter that adds 30 mV', () => {
  it('should be normal but for the line that is off', () => {
    const board = boardOf(demoDiodePlan, (pin, good) =>
      pin.line === 'KEY_ROW'
        ? readsValue(0.588 - 0.08, 0.002)
        : offsetBy(0.03, { ...good, standardUncertainty: 0.002 }),
    );
    // Supplies have no shift of their own here: too few groups to tell one.
    const signals = abnormal(board, demoDiodePlan).filter(
      (line) => !/LAMP_BOOST|_3V3|_1V8|_0V9|GND/u.test(line),
    );
    expect(signals).toEqual(['37 KEY_ROW low']);
  });
});

describe('judgeInContext', () => {
  it('should judge the pins read so far and no others', () => {
    const part = boardOf(demoPlan, ({ index }, good) => (index < 6 ? good : unread));
    expect(inContext(part, demoPlan).judgements.map(({ pin }) => pin)).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
      '6',
    ]);
  });

  it('should leave alone what wobbles', () => {
    const board = boardOf(demoPlan, ({ pin }, good) =>
      pin === '2' ? { ...good, verdict: 'wobble' } : good,
    );
    expect(verdicts(board, demoPlan).has('2 LANE0_P')).toBe(false);
  });

  it('should believe a normal line more whose mate is normal and reads alike', () => {
    const only = (pins: readonly string[]) =>
      inContext(
        boardOf(demoPlan, ({ pin }) => (pins.includes(pin) ? readsValue(414, 6) : unread)),
        demoPlan,
      ).judgements[0];
    const alone = only(['2']);
    const paired = only(['2', '3']);
    expect(alone?.verdict).toBe('normal');
    expect(paired?.confidence).toBeGreaterThan(alone?.confidence ?? 1);
    expect(paired?.confidence).toBeLessThan(1);
  });

  it('should not make a line normal by its mate', () => {
    const board = boardOf(demoPlan, ({ line }, good) => {
      if (line === 'LANE0_P') return readsValue(426, 1.5);
      return line === 'LANE0_N' ? readsValue(424, 1.5) : good;
    });
    const found = inContext(board, demoPlan).judgements;
    expect(found[1]).toMatchObject({ verdict: 'unsure', mate: { finding: 'alike' } });
    expect(found[2]).toMatchObject({ verdict: 'normal' });
  });

  it('should judge by neighbours where nothing is expected', () => {
    const plan = planOf({
      P: signal('d', null, 0.1, 'N'),
      N: signal('d', null, 0.1, 'P'),
      X: signal(undefined, null),
    });
    const found = inContext([readsValue(400), readsNothing, readsValue(9000)], plan);
    expect(found.judgements.map(({ verdict }) => verdict)).toEqual(['normal', 'open', 'normal']);
    expect(found.judgements[1]?.neighbours?.because).toEqual(['mate-conducts']);
    expect(found.judgements[2]?.neighbours).toMatchObject({ probably: 'unknown' });
  });

  it('should not ask neighbours where something is expected', () => {
    const { judgements } = inContext(boardOf(demoPlan), demoPlan);
    expect(judgements).toHaveLength(40);
    expect(judgements.filter(({ neighbours }) => neighbours !== null)).toEqual([]);
  });
});

describe('judgeInContext, for any board', () => {
  const reading = fc.oneof(
    fc.double({ min: -1e12, max: 1e12, noNaN: true }).map((value) => readsValue(value, 1e-9)),
    fc.double({ min: 380, max: 420, noNaN: true }).map((value) => readsValue(value)),
    fc.constantFrom(readsNothing, unread, { ...readsValue(400), verdict: 'wobble' as const }),
  );
  const blank: Plan = {
    ...demoPlan,
    pins: demoPlan.pins.map((pin) => ({ ...pin, expected: null, shortLimit: 0 })),
  };

  it.each([
    ['with', demoPlan],
    ['without', blank],
  ])('should give one sound judgement a pin read, %s expected values', (_what, plan) => {
    fc.assert(
      fc.property(fc.array(reading, { minLength: 40, maxLength: 40 }), (pins) => {
        const { judgements } = inContext(pins, plan);
        const read = pins.filter(
          ({ value, overload, verdict }) => verdict !== 'wobble' && (value !== null || overload),
        );
        expect(judgements).toHaveLength(read.length);
        for (const { confidence, verdict } of judgements) {
          expect(confidence).toBeGreaterThanOrEqual(0);
          expect(confidence).toBeLessThanOrEqual(1);
          expect(['unread', 'wobble']).not.toContain(verdict);
        }
        expect(JSON.stringify(judgements)).not.toMatch(/null,"verdict"|NaN|Infinity/u);
      }),
      { seed: 451, numRuns: 60 },
    );
  });
});

describe('judgeShifted', () => {
  it("should add the shift's doubt to the reading's own", () => {
    const [, pin] = demoPlan.pins as [PlannedPin, PlannedPin];
    const seen: number[] = [];
    judgeShifted(
      pin,
      readsValue(400, 3),
      {
        signal: { scale: 1.05, standardUncertainty: 0.01, pins: 9, groups: 3 },
        supply: null,
        untold: { signal: null, supply: null },
      },
      (_, observed) => {
        if ('value' in observed) seen.push(observed.standardUncertainty);
        return { verdict: 'normal', confidence: 1, expected: null };
      },
    );
    expect(seen).toEqual([Math.hypot(3, 3.88)]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimateShift, noShifts, type Shift } from '../../../src/core/context/estimate-shift.js';
import type { ReadPin } from '../../../src/core/context/read-pin.js';
import type { Plan, PlannedPin } from '../../../src/core/profile/plan.js';
import {
  boardOf,
  demoDiodePlan,
  demoPlan,
  deviates,
  offsetBy,
  planOf,
  readsNothing,
  readsValue,
  scaledBy,
  signal,
  unread,
} from './demo-board.js';

const scaleOf = (shift: Shift | null): number | null =>
  shift !== null && 'scale' in shift ? shift.scale : null;

/** A demo board with groups 2 % and lines 0.8 % apart, as boards differ. Common practice, no source. */
const scattered = (
  plan: Plan,
  seed: number,
  meter: (pin: ReadPin) => ReadPin,
  fault: (pin: PlannedPin, good: ReadPin) => ReadPin = (_, good) => good,
): readonly ReadPin[] => {
  const next = deviates(seed);
  const groups = new Map<string, number>();
  return boardOf(plan, (pin, good) => {
    const key = pin.group ?? pin.line;
    if (!groups.has(key)) groups.set(key, 0.02 * Math.max(-2, Math.min(2, next())));
    const own = 1 + (groups.get(key) ?? 0) + 0.008 * next();
    return meter(fault(pin, pin.kind === 'ground' ? good : scaledBy(own, good)));
  });
};

describe('estimateShift in resistance', () => {
  it('should find no shift of a meter that reads what is expected', () => {
    expect(estimateShift(boardOf(demoPlan), demoPlan)).toMatchObject(noShifts);
  });

  it('should find none before anything is read', () => {
    expect(
      estimateShift(
        demoPlan.pins.map(() => unread),
        demoPlan,
      ),
    ).toMatchObject(noShifts);
    expect(estimateShift([], demoPlan)).toMatchObject(noShifts);
  });

  it.each([1.06, 0.94, 1.1, 0.9, 1.03])('should find a meter that reads %f times as much', (by) => {
    const { signal: shift } = estimateShift(
      boardOf(demoPlan, (_, good) => scaledBy(by, good)),
      demoPlan,
    );
    expect(scaleOf(shift)).toBeCloseTo(by, 9);
    expect(shift?.standardUncertainty).toBeLessThan(0.01);
    expect(shift?.groups).toBe(7);
    expect(shift?.pins).toBe(21);
  });

  it('should find it also where boards differ, and claim no more than it knows', () => {
    let within = 0;
    const boards = 200;
    for (let seed = 1; seed <= boards; seed += 1) {
      const { signal: shift } = estimateShift(
        scattered(demoPlan, seed, (pin) => scaledBy(1.06, pin)),
        demoPlan,
      );
      const error = Math.abs((scaleOf(shift) ?? 0) - 1.06);
      if (shift !== null && error <= 2 * shift.standardUncertainty) within += 1;
    }
    // Two standard uncertainties hold 95 % of errors; three standard deviations of a proportion below that.
    expect(within / boards).toBeGreaterThan(0.95 - 3 * Math.sqrt((0.95 * 0.05) / boards));
  });

  it('should hardly ever invent a shift from boards that differ', () => {
    let invented = 0;
    for (let seed = 1; seed <= 300; seed += 1) {
      if (
        estimateShift(
          scattered(demoPlan, seed, (pin) => pin),
          demoPlan,
        ).signal
      )
        invented += 1;
    }
    expect(invented / 300).toBeLessThan(0.02);
  });

  it('should not mind a leaky line, an open one and one near its limit', () => {
    const { signal: shift } = estimateShift(
      boardOf(demoPlan, ({ line }, good) => {
        if (line === 'LANE1_N') return readsNothing;
        if (line === 'BUS_DATA') return readsValue(1.06 * 1700);
        if (line === 'STROBE_P') return readsValue(1.06 * 405 * 1.085);
        return scaledBy(1.06, good);
      }),
      demoPlan,
    );
    expect(Math.abs((scaleOf(shift) ?? 0) - 1.06)).toBeLessThan(0.006);
  });

  it.each([
    ['picture-data', 1.06],
    ['picture-data', 0.91],
    ['picture-data', 1.09],
    ['control', 1.09],
    ['bus', 0.94],
  ])('should not take group %s alone at %f for a shift', (off, by) => {
    const board = boardOf(demoPlan, ({ group }, good) =>
      group === off ? scaledBy(by, good) : good,
    );
    expect(estimateShift(board, demoPlan).signal).toBeNull();
  });

  it('should not take for a shift what only one group of the walk so far shows', () => {
    const first = boardOf(demoPlan, ({ group }, good) =>
      group === 'picture-data' ? scaledBy(1.09, good) : unread,
    );
    expect(estimateShift(first, demoPlan).signal).toBeNull();
  });

  it('should still tell the shift from a group that is off', () => {
    const { signal: shift } = estimateShift(
      boardOf(demoPlan, ({ group }, good) =>
        scaledBy(group === 'picture-data' ? 1.06 * 0.91 : 1.06, good),
      ),
      demoPlan,
    );
    expect(scaleOf(shift)).toBeCloseTo(1.06, 2);
    expect(shift?.groups).toBe(6);
  });

  it('should not believe more than 12 %', () => {
    const board = boardOf(demoPlan, (_, good) => scaledBy(1.14, good));
    expect(estimateShift(board, demoPlan).signal).toBeNull();
  });

  it('should not carry the shift of one class over to another', () => {
    const board = boardOf(demoPlan, ({ kind }, good) =>
      kind === 'supply' ? scaledBy(1.11, good) : good,
    );
    expect(estimateShift(board, demoPlan).signal).toBeNull();
    const others = boardOf(demoPlan, ({ kind }, good) =>
      kind === 'signal' ? scaledBy(1.06, good) : good,
    );
    expect(estimateShift(others, demoPlan).supply).toBeNull();
  });

  it('should tell nothing where one group is all there is', () => {
    const lines = Object.fromEntries(
      Array.from({ length: 12 }, (_, at) => [`D${at}`, signal('data', 388)]),
    );
    const plan = planOf(lines);
    const board = boardOf(plan, (_, good) => scaledBy(1.06, good));
    expect(estimateShift(board, plan).signal).toBeNull();
  });

  it('should count pairs and single lines without a group as groups of their own', () => {
    const plan = planOf({
      A_P: signal(undefined, 400, 0.1, 'A_N'),
      A_N: signal(undefined, 402, 0.1, 'A_P'),
      B_P: signal(undefined, 800, 0.1, 'B_N'),
      B_N: signal(undefined, 804, 0.1, 'B_P'),
      C: signal(undefined, 5000),
      D: signal(undefined, 9000),
    });
    const shift = estimateShift(
      boardOf(plan, (_, good) => scaledBy(1.06, good)),
      plan,
    ).signal;
    expect(shift).toMatchObject({ pins: 6, groups: 4 });
    expect(scaleOf(shift)).toBeCloseTo(1.06, 9);
  });

  it('should count a line on many pins once', () => {
    const lines = {
      A: signal('a', 400),
      B: signal('b', 800),
      C: signal('c', 1600),
      D: signal('d', 3200),
    };
    const plan = planOf(lines, ['A', 'A', 'A', 'A', 'A', 'A', 'B', 'C', 'D']);
    const board = boardOf(plan, ({ line }, good) => (line === 'A' ? scaledBy(1.06, good) : good));
    expect(estimateShift(board, plan).signal).toBeNull();
  });

  it('should leave out what wobbles', () => {
    const board = boardOf(demoPlan, (_, good) => ({
      ...scaledBy(1.06, good),
      verdict: 'wobble' as const,
    }));
    expect(estimateShift(board, demoPlan).signal).toBeNull();
  });
});

describe('estimateShift in diode test', () => {
  it.each([0.02, -0.03, 0.055])('should find an offset of %f V', (volts) => {
    const { signal: shift } = estimateShift(
      boardOf(demoDiodePlan, (_, good) => offsetBy(volts, good)),
      demoDiodePlan,
    );
    expect(shift !== null && 'offset' in shift ? shift.offset : null).toBeCloseTo(volts, 9);
  });

  it('should not believe more than 60 mV', () => {
    const board = boardOf(demoDiodePlan, (_, good) => offsetBy(0.075, good));
    expect(estimateShift(board, demoDiodePlan).signal).toBeNull();
  });

  it('should not take one group for an offset', () => {
    const board = boardOf(demoDiodePlan, ({ group }, good) =>
      group === 'picture-data' ? offsetBy(-0.04, good) : good,
    );
    expect(estimateShift(board, demoDiodePlan).signal).toBeNull();
  });
});

describe('estimateShift, for any board', () => {
  const factor = fc.double({ min: 0.5, max: 2, noNaN: true });

  it('should give a small finite shift or none, whatever is read', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.double({ min: -1e9, max: 1e9, noNaN: true }), fc.constant(null)), {
          minLength: 40,
          maxLength: 40,
        }),
        (values) => {
          const board = values.map((value) => (value === null ? readsNothing : readsValue(value)));
          const { signal: shift } = estimateShift(board, demoPlan);
          const scale = scaleOf(shift);
          return scale === null || (Math.abs(scale - 1) <= 0.12 && (shift?.groups ?? 0) >= 3);
        },
      ),
      { seed: 401, numRuns: 200 },
    );
  });

  it('should not depend on one line, however far it is off', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 39 }), factor, (at, by) => {
        const board = boardOf(demoPlan, ({ index }, good) =>
          scaledBy(index === at ? 1.06 * by : 1.06, good),
        );
        const scale = scaleOf(estimateShift(board, demoPlan).signal);
        return scale !== null && Math.abs(scale - 1.06) < 0.008;
      }),
      { seed: 402, numRuns: 300 },
    );
  });

  it('should not depend on the order of the pins', () => {
    const rotated = (plan: Plan, by: number): Plan => {
      const pins = [...plan.pins.slice(by), ...plan.pins.slice(0, by)];
      return { ...plan, pins: pins.map((pin, index) => ({ ...pin, index })) };
    };
    const straight = estimateShift(
      scattered(demoPlan, 7, (pin) => scaledBy(1.07, pin)),
      demoPlan,
    ).signal;
    const board = scattered(demoPlan, 7, (pin) => scaledBy(1.07, pin));
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 39 }), (by) => {
        const turned = [...board.slice(by), ...board.slice(0, by)];
        const { signal: shift } = estimateShift(turned, rotated(demoPlan, by));
        expect(scaleOf(shift)).toBeCloseTo(scaleOf(straight) ?? 0, 9);
      }),
      { seed: 403, numRuns: 20 },
    );
  });
});

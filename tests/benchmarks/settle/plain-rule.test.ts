// The yardstick itself: right on clean readings, and wrong in the ways it is known for.
import { describe, expect, it } from 'vitest';
import type { Input } from '../../../src/core/inputs.js';
import { inputTime } from '../../../src/core/inputs.js';
import { bestPlain, emptyGrid, tryPlain } from './best-plain.js';
import { plainRule } from './plain-rule.js';
import { scoreWalk } from './score-walk.js';
import { walkByHand } from './walk-by-hand.js';

const setting = { readings: 3, percent: 0.5 };
const replace = (from: number, to: number, make: (t: number) => Input) => ({
  ...walkByHand,
  inputs: walkByHand.inputs.map((input) => {
    const t = inputTime(input);
    return input.kind === 'reading' && t > from && t < to ? make(t) : input;
  }),
});

describe('plainRule', () => {
  it('walks clean readings without a fault', () => {
    const score = scoreWalk(walkByHand, plainRule(walkByHand, setting));
    expect(score.findings).toEqual([]);
    expect(score.reached).toBe(5);
  });

  it('advances twice on a slip', () => {
    const slipped = replace(6.45, 6.65, (t) => ({
      kind: 'reading',
      reading: { t, function: 'resistance', overload: true },
    }));
    const score = scoreWalk(slipped, plainRule(slipped, setting));
    expect(score.departure).toMatchObject({ fault: 'ran-ahead', index: 2, twice: true });
  });

  it('captures a creep that is slow enough', () => {
    const creeping = replace(5, 8, (t) => ({
      kind: 'reading',
      reading: { t, function: 'resistance', value: 300 + 1.2 * (t - 5) },
    }));
    const score = scoreWalk(creeping, plainRule(creeping, { readings: 2, percent: 1 }));
    expect(score.findings[0]).toMatchObject({ fault: 'wrong-capture', index: 1 });
  });

  it('finds the setting with the fewest errors in the grid', () => {
    const grid = emptyGrid();
    tryPlain(grid, walkByHand);
    const best = bestPlain(grid);
    expect(best.tally).toMatchObject({ wrong: 0, misnamed: 0, missed: 0, pins: 5 });
    expect(best.setting.readings).toBe(2);
    expect(() => bestPlain([])).toThrow(RangeError);
  });
});
